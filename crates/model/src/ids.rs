//! Typed indices: which item of which list, so that a frame's number cannot be taken for a network's.

use serde::{Deserialize, Serialize};

macro_rules! index {
    ($(#[$doc:meta])* $name:ident) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
        #[serde(transparent)]
        pub struct $name(pub u32);

        impl $name {
            /// The position in its list, counted from 0.
            #[must_use]
            pub fn index(self) -> usize {
                self.0 as usize
            }
        }
    };
}

index! {
    /// A network, by its position in [`crate::Description::networks`].
    NetworkId
}
index! {
    /// A control unit, by its position in [`crate::Description::ecus`].
    EcuId
}
index! {
    /// A frame, by its position in [`crate::Description::frames`].
    FrameId
}
index! {
    /// A signal, by its position in [`crate::Frame::signals`] of its frame.
    SignalId
}
index! {
    /// A page of a frame, by its position in [`crate::Frame::pages`].
    PageId
}
index! {
    /// A table of state words, by its position in [`crate::Description::states`].
    StatesId
}
index! {
    /// A gateway's route, by its position in [`crate::Description::routes`].
    RouteId
}
