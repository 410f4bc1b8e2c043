//! What can go wrong while the recording is made.

use wirelore_log::LogError;

/// Why there is no recording.
#[derive(Debug, thiserror::Error)]
#[non_exhaustive]
pub enum DriveError {
    /// The description has mistakes.
    #[error("the demo vehicle's description has mistakes: {messages}")]
    Description {
        /// The compiler's messages.
        messages: String,
    },
    /// The description lacks something that the drive needs.
    #[error("the demo vehicle's description has no {what}, which the drive needs")]
    Missing {
        /// What it lacks.
        what: String,
    },
    /// A frame could not be encoded.
    #[error("the frame {frame} could not be encoded: {reason}")]
    Encode {
        /// The frame.
        frame: String,
        /// Why not.
        reason: String,
    },
    /// The recording could not be written.
    #[error("the recording could not be written")]
    Log(#[from] LogError),
}
