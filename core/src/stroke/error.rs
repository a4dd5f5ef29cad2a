use core::fmt;

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

impl fmt::Display for StrokeError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::ScrewsCrossed => "the far screw must be farther from the gripping end than the near one",
            Self::ScrewOffJaw => "a screw counterbore reaches past the end of the jaw",
            Self::GrooveOffJaw => "the first groove lies beyond the jaw",
            Self::NutTooShort => "the T-nut is shorter than the screws are apart",
            Self::NoTooth => "the T-nuts find no tooth on the serrated face of the master jaw",
            Self::NotALength => "stroke, pitch and lengths must be more than nothing",
        })
    }
}

impl core::error::Error for StrokeError {}
