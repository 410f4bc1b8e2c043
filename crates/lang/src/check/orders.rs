//! Is one signal's byte order the odd one out among its neighbours?

use wirelore_bits::ByteOrder;
use wirelore_model::Content;

use crate::resolve::contents::{Contents, SignalOrigin};
use crate::resolve::messages::Messages;
use crate::resolve::settings::{order_name, order_word};
use crate::{Diagnostic, Rule};

/// So many signals of the other order make one stand out.
const NEIGHBOURS: usize = 3;

pub(crate) fn check(contents: &Contents<'_>, messages: &mut Messages) {
    // The signals with several bytes by order; an array counts once.
    let mut intel: Vec<&SignalOrigin<'_>> = Vec::new();
    let mut motorola: Vec<&SignalOrigin<'_>> = Vec::new();
    for (signal, origin) in contents.frame.signals.iter().zip(&contents.origins) {
        if origin.order_is_stated {
            return;
        }
        // The place follows from the profile, so it says nothing of the others.
        if signal.protection().is_some() {
            continue;
        }
        let Content::Number { field, .. } = &signal.content else { continue };
        let Some(place) = field.places().iter().find(|place| place.spans_bytes()) else { continue };
        let list = if place.order() == ByteOrder::Intel { &mut intel } else { &mut motorola };
        if list.last().is_none_or(|last| !std::ptr::eq(last.tree, origin.tree)) {
            list.push(origin);
        }
    }
    let (odd, order, others) = match (intel.as_slice(), motorola.as_slice()) {
        ([odd], others) if others.len() >= NEIGHBOURS => (odd, ByteOrder::Intel, others),
        (others, [odd]) if others.len() >= NEIGHBOURS => (odd, ByteOrder::Motorola, others),
        _ => return,
    };
    if odd.tree.place.as_ref().is_some_and(|place| place.order.is_some()) {
        return;
    }
    let other = if order == ByteOrder::Intel { ByteOrder::Motorola } else { ByteOrder::Intel };
    let name = &odd.tree.head.name.value;
    let text = format!(
        "`{name}` is {}, and the {} other signals of several bytes in this frame are {}",
        order_name(order),
        others.len(),
        order_name(other)
    );
    messages.push(
        Diagnostic::new(Rule::OrderOddOneOut, odd.site(), text)
            .here("the odd one out")
            .remark(others[0].site(), format!("{}, like the rest", order_name(other)))
            .help("check its ends: the place is written from the most significant bit to the least significant one")
            .help(format!(
                "if it is right, write `{}` behind the place, or `order mixed` in the frame",
                order_word(order)
            )),
    );
}
