//! The map as a page that needs nothing else.

use crate::elements;

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
.away { opacity: .13; }
summary { padding: 1em; cursor: pointer; }
@media print { summary { display: none; } }
";

/// The page around a map; a solution is folded away.
pub(crate) fn page(title: &str, map: &str, solution: Option<&str>) -> String {
    let solution = solution.map(|map| format!("<details><summary>Solution</summary>\n{map}</details>\n"));
    let body = format!("{map}{}<script>\n{SCRIPT}</script>\n", solution.unwrap_or_default());
    elements::page(title, STYLE, &body)
}
