//! The map as a page that needs nothing else.

use crate::text::escaped;

/// Light for what belongs to the item under the pointer; without a script the page shows the same map.
const SCRIPT: &str = "\
for (const map of document.querySelectorAll('svg')) {
  const items = [...map.querySelectorAll('[data-u],[data-n]')];
  const list = (item, key) => (item.dataset[key] || '').split(' ').filter(Boolean);
  const light = chosen => {
    const units = new Set(list(chosen, 'u')), nets = new Set(list(chosen, 'n'));
    const isUnit = chosen.classList.contains('unit'), isWire = chosen.classList.contains('wire');
    for (const item of items) {
      const u = list(item, 'u'), n = list(item, 'n');
      const sharesUnit = u.some(x => units.has(x)), sharesNet = n.some(x => nets.has(x));
      const belongs = isWire ? item.classList.contains('unit') && sharesUnit || item === chosen
        : isUnit ? sharesUnit || (!item.classList.contains('stub') && sharesNet)
        : sharesNet;
      item.classList.toggle('away', !belongs);
    }
  };
  const clear = () => items.forEach(item => item.classList.remove('away'));
  map.addEventListener('pointerover', event => {
    const chosen = event.target.closest('[data-u],[data-n]');
    if (chosen) light(chosen); else clear();
  });
  map.addEventListener('pointerleave', clear);
}
";

const STYLE: &str = "\
body { margin: 0; background: #fff; color: #1d2733; font-family: sans-serif; }
svg { display: block; width: 100%; height: auto; max-height: 100vh; margin: 0 auto; }
.away { opacity: .13; }
summary { padding: 1em; cursor: pointer; }
@page { size: A4 landscape; margin: 8mm; }
@media print { summary { display: none; } }
";

/// The page around a map; a solution is folded away.
pub(crate) fn page(title: &str, map: &str, solution: Option<&str>) -> String {
    let solution = solution.map(|map| format!("<details><summary>Solution</summary>\n{map}</details>\n"));
    format!(
        "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n\
         <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>{}</title>\n\
         <style>\n{STYLE}</style>\n</head>\n<body>\n{map}{}<script>\n{SCRIPT}</script>\n</body>\n</html>\n",
        escaped(title),
        solution.unwrap_or_default()
    )
}
