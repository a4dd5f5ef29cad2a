//! Where each material figure comes from, and how far it was confirmed.

/// How a figure reached the table.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Trust {
    /// The figure was read in the cited text.
    Read,
    /// The figure was recalled; the cited book or standard is where to confirm it.
    FromMemory,
}

/// Key of one cited reference; [`Source::reference`] resolves it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Source {
    /// Textbook tables of density, modulus, Poisson's ratio and strength.
    Callister,
    /// Textbook table of average mechanical properties.
    Hibbeler,
    /// Textbook table of hot-rolled and cold-drawn strengths.
    Shigley,
    /// Textbook table of elastic constants.
    Dowling,
    /// Textbook appendix of densities and elastic constants.
    Gere,
    /// Structural steels: yield strengths.
    En10025,
    /// Steels for quenching and tempering: C45.
    En10083,
    /// Bright free-cutting steel bars.
    En10277,
    /// Stainless bars: X20Cr13.
    En10088,
    /// Extruded aluminium bars: EN AW-6082.
    En755,
    /// Ductile irons.
    En1563,
    /// Copper alloy property sheets.
    CopperSheets,
    /// Stainless and titanium property sheets.
    StainlessAndTitaniumSheets,
    /// Tool steel property sheets.
    ToolSteelSheets,
    /// Alloy 718 property sheets.
    NickelSheets,
    /// Encyclopedia table of engineering plastics.
    PlasticsTable,
    /// Specific cutting force by material group.
    Vdi3323Groups,
    /// Kienzle set whose forces were compared with a public table.
    KienzleCompared,
    /// Kienzle set not compared.
    KienzleRecalled,
    /// Metals handbook, recalled.
    MetalsHandbook,
    /// European material standards, recalled.
    EnRecalled,
    /// Plastics handbook, recalled.
    PlasticsHandbook,
    /// Friction table for gripped steel parts.
    GripFrictionTable,
    /// Friction table in the manner of VDI 3106, recalled.
    Vdi3106Recalled,
}

/// A cited reference.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Reference {
    /// Book, standard or document, as one would look it up.
    pub citation: &'static str,
    /// Whether the figures were read there or recalled.
    pub trust: Trust,
}

impl Source {
    /// Every key, for listing the references.
    pub const ALL: [Self; 24] = [
        Self::Callister,
        Self::Hibbeler,
        Self::Shigley,
        Self::Dowling,
        Self::Gere,
        Self::En10025,
        Self::En10083,
        Self::En10277,
        Self::En10088,
        Self::En755,
        Self::En1563,
        Self::CopperSheets,
        Self::StainlessAndTitaniumSheets,
        Self::ToolSteelSheets,
        Self::NickelSheets,
        Self::PlasticsTable,
        Self::Vdi3323Groups,
        Self::KienzleCompared,
        Self::KienzleRecalled,
        Self::MetalsHandbook,
        Self::EnRecalled,
        Self::PlasticsHandbook,
        Self::GripFrictionTable,
        Self::Vdi3106Recalled,
    ];

    /// The reference behind the key.
    ///
    /// ```
    /// use holdround_core::materials::{Source, Trust};
    /// assert_eq!(Source::Shigley.reference().trust, Trust::Read);
    /// ```
    #[must_use]
    pub const fn reference(self) -> Reference {
        match self {
            Self::Callister => read(
                "W. D. Callister and D. G. Rethwisch, Fundamentals of Materials Science and \
                 Engineering, 3rd ed. (2007), appendix B, tables B.1 to B.4",
            ),
            Self::Hibbeler => read(
                "R. C. Hibbeler, Mechanics of Materials, table of average mechanical properties \
                 of typical engineering materials",
            ),
            Self::Shigley => read(
                "R. G. Budynas and J. K. Nisbett, Shigley's Mechanical Engineering Design, \
                 8th ed. (2008), table A-20 (after the SAE Handbook, 1986)",
            ),
            Self::Dowling => read("N. E. Dowling, Mechanical Behavior of Materials, table 5.2"),
            Self::Gere => read("J. M. Gere and B. J. Goodno, Mechanics of Materials, appendix H, tables H-1 and H-2"),
            Self::En10025 => read(
                "EN 10025-2, least yield strength up to 16 mm, as tabulated in a public \
                 engineering reference",
            ),
            Self::En10083 => {
                read("EN 10083-2, C45 normalised, 16 to 100 mm, as tabulated in a public steel data sheet")
            }
            Self::En10277 => {
                read("EN 10277-3, 11SMn30 cold drawn, 16 to 40 mm, as tabulated in a public steel data sheet")
            }
            Self::En10088 => read(
                "EN 10088-3, X20Cr13 quenched and tempered to 700 MPa, as tabulated in a public \
                 steel data sheet",
            ),
            Self::En755 => read(
                "EN 755-2, EN AW-6082 T6 bars of 20 to 150 mm, with physical properties, as \
                 tabulated in public alloy data sheets",
            ),
            Self::En1563 => read(
                "EN 1563:1997, mechanical and physical properties of spheroidal graphite irons, \
                 as tabulated in public foundry pages",
            ),
            Self::CopperSheets => {
                read("Public property sheets of UNS C36000 (ASTM B16, half hard) and UNS C93200 (ASTM B505)")
            }
            Self::StainlessAndTitaniumSheets => {
                read("Public property sheets of UNS S31600 (annealed) and UNS R50400 (grade 2, annealed)")
            }
            Self::ToolSteelSheets => read(
                "Public property sheets of UNS T30402 (D2): density, and modulus as a range of \
                 190 to 210 GPa of which the middle is used",
            ),
            Self::NickelSheets => read("Public property sheets of UNS N07718: density and elastic constants"),
            Self::PlasticsTable => read(
                "Encyclopedia of Physical Science and Technology, 3rd ed. (2001), Plastics \
                 Engineering, table I: short-term properties",
            ),
            Self::Vdi3323Groups => read(
                "Public turning handbook (2017), specific cutting force and exponent by the \
                 material groups of VDI 3323 (a later edition gives less for titanium: the greater \
                 is kept)",
            ),
            Self::KienzleCompared => read(
                "H. Tschaetsch, Praxiswissen Zerspantechnik, recalled; reproduces within 4 % the \
                 specific cutting forces read in a public table (feeds 0.16 to 1.6 mm, entering \
                 angle 45 degrees)",
            ),
            Self::KienzleRecalled => recalled(
                "H. Tschaetsch, Praxiswissen Zerspantechnik; W. Koenig and K. Essel, Spezifische \
                 Schnittkraftwerte fuer die Zerspanung metallischer Werkstoffe (1973)",
            ),
            Self::MetalsHandbook => recalled("ASM Handbook, volumes 1 and 2"),
            Self::EnRecalled => recalled(
                "EN 10083-2, EN 10083-3, EN 10084, EN 10293, EN 1561 or EN ISO 683-17, whichever \
                 names the material",
            ),
            Self::PlasticsHandbook => recalled("H. Saechtling, International Plastics Handbook"),
            Self::GripFrictionTable => read(
                "Public operating manual of a power-operated collet chuck, table of grip \
                 coefficients for steel workpieces (tangential and axial) with material factors",
            ),
            Self::Vdi3106Recalled => recalled("VDI 3106, grip coefficients of jaws"),
        }
    }
}

const fn read(citation: &'static str) -> Reference {
    Reference { citation, trust: Trust::Read }
}

const fn recalled(citation: &'static str) -> Reference {
    Reference { citation, trust: Trust::FromMemory }
}
