use core::fmt;

use crate::text::Text;

/// Why no tooth can be worked out at all.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum StrokeError {
    /// The far screw is not beyond the near one.
    ScrewsCrossed,
    /// A counterbore reaches past an end of the jaw.
    ScrewOffJaw,
    /// The first groove lies beyond the jaw.
    GrooveOffJaw,
    /// The T-nut is too short to hold both screws.
    NutTooShort,
    /// On no tooth do the T-nuts lie over the serrated face of the master jaw.
    NoTooth,
    /// A length, the stroke or the pitch is not above zero or is not a number.
    NotALength,
}

impl From<&StrokeError> for Text {
    fn from(error: &StrokeError) -> Self {
        Self::Words(match error {
            StrokeError::ScrewsCrossed => "the far screw must be farther from the gripping end than the near one",
            StrokeError::ScrewOffJaw => "a screw counterbore reaches past the end of the jaw",
            StrokeError::GrooveOffJaw => "the first groove lies beyond the jaw",
            StrokeError::NutTooShort => "the T-nut is shorter than the screws are apart",
            StrokeError::NoTooth => "the T-nuts find no tooth on the serrated face of the master jaw",
            StrokeError::NotALength => "stroke, pitch and lengths must be more than nothing",
        })
    }
}

impl fmt::Display for StrokeError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        Text::from(self).fmt(f)
    }
}

impl core::error::Error for StrokeError {}
