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

/// Sheets lying on their side, in millimetres (ISO 216), and their margin.
const SHEETS: [(i32, i32); 4] = [(297, 210), (420, 297), (594, 420), (841, 594)];
const PAPER_MARGIN: i32 = 8;
/// A pixel has at least so many micrometres on paper: the smallest letters, of 9 pixels, are then about 1.5 mm high in all.
const LEAST_PIXEL: i32 = 165;

/// The smallest sheet on which a map of this size can be read; the largest one for what is still larger.
fn paper(width: i32, height: i32) -> (i32, i32) {
    let is_enough = |(paper_width, paper_height): &(i32, i32)| {
        let pixel = |paper: i32, map: i32| (paper - 2 * PAPER_MARGIN) * 1000 / map.max(1);
        pixel(*paper_width, width).min(pixel(*paper_height, height)) >= LEAST_PIXEL
    };
    SHEETS.into_iter().find(is_enough).unwrap_or(SHEETS[SHEETS.len() - 1])
}

/// The page around a map; a solution is folded away.
pub(crate) fn page(title: &str, size: (i32, i32), map: &str, solution: Option<&str>) -> String {
    let (width, height) = paper(size.0, size.1);
    let solution = solution.map(|map| format!("<details><summary>Solution</summary>\n{map}</details>\n"));
    let body = format!("{map}{}<script>\n{SCRIPT}</script>\n", solution.unwrap_or_default());
    let style = format!("{STYLE}@page {{ size: {width}mm {height}mm; margin: {PAPER_MARGIN}mm; }}\n");
    elements::page(title, &style, &body)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// ISO 216: A4, A3, A2 and A1.
    #[test]
    fn large_maps_get_large_sheets() {
        assert_eq!(paper(1500, 1000), (297, 210));
        assert_eq!(paper(2400, 1600), (420, 297));
        assert_eq!(paper(3300, 2300), (594, 420));
        assert_eq!(paper(9000, 9000), (841, 594));
    }
}
