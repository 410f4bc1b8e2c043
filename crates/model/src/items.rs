//! Items by their indices: `database[frame].label.name`.

use std::ops::Index;

use crate::{Description, Ecu, EcuId, Frame, FrameId, Network, NetworkId, Page, PageId, Signal, SignalId};

macro_rules! by_index {
    ($($owner:ident [$id:ident] -> $item:ident in $list:ident;)*) => {
        $(
            /// An index of another description may lead to nothing: then this panics, as with any list.
            impl Index<$id> for $owner {
                type Output = $item;

                #[inline]
                fn index(&self, id: $id) -> &$item {
                    &self.$list[id.index()]
                }
            }
        )*
    };
}

by_index! {
    Description[NetworkId] -> Network in networks;
    Description[EcuId] -> Ecu in ecus;
    Description[FrameId] -> Frame in frames;
    Frame[SignalId] -> Signal in signals;
    Frame[PageId] -> Page in pages;
}
