//! Part and jaw materials and grip coefficients: figures apart from code, each with its source.
//!
//! Figures are typical room-temperature values for choosing a material, not a certificate of the
//! bar in the chuck; every one may be overridden by the user.
//!
//! ```
//! use holdround_core::materials::{CuttingFigures, Family, Figure, Material, Reference, Trust, all, find};
//! let steel: &Material = find("carbon-steel-c45").unwrap();
//! assert_eq!(steel.family, Family::Steel);
//! let CuttingFigures { specific_force, .. } = steel.cutting.unwrap();
//! let Figure { value, source } = specific_force;
//! assert_eq!(value, 2220e6);
//! // Every figure tells where it is from, and whether that was read.
//! let Reference { citation, .. } = source.reference();
//! assert!(!citation.is_empty());
//! let read = all().filter(|material| material.density.source.reference().trust == Trust::Read);
//! assert!(read.count() > 10);
//! ```

mod castings;
pub mod friction;
mod nonferrous;
mod plastics;
mod source;
mod steels;

pub use source::{Reference, Source, Trust};

/// A number together with where it comes from.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Figure {
    /// The value in SI units.
    pub value: f64,
    /// Where the value comes from.
    pub source: Source,
}

/// What a material is, as far as gripping and cutting tell materials apart.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Family {
    /// Carbon, alloy and cast steel.
    Steel,
    /// Stainless steel.
    StainlessSteel,
    /// Tool steel, annealed.
    ToolSteel,
    /// Grey (lamellar graphite) iron.
    GreyIron,
    /// Ductile (spheroidal graphite) iron.
    DuctileIron,
    /// Aluminium alloy.
    Aluminium,
    /// Copper-zinc alloy.
    Brass,
    /// Copper-tin or copper-aluminium alloy.
    Bronze,
    /// Unalloyed copper.
    Copper,
    /// Titanium and its alloys.
    Titanium,
    /// Nickel alloy.
    Nickel,
    /// Magnesium alloy.
    Magnesium,
    /// Engineering plastic: stiffness depends on time, temperature and moisture.
    Plastic,
}

/// Main values of the specific cutting force `kc = kc1.1 (h / 1 mm)^-mc`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CuttingFigures {
    /// `kc1.1`: specific cutting force of a chip 1 mm wide and 1 mm thick, Pa.
    pub specific_force: Figure,
    /// `mc`: exponent of the chip thickness, without unit.
    pub exponent: Figure,
}

/// A material of parts or jaws.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Material {
    /// Stable key, in kebab case.
    pub id: &'static str,
    /// Name in plain words.
    pub name: &'static str,
    /// Standard designations.
    pub designation: &'static str,
    /// Family.
    pub family: Family,
    /// Density, kg/m3.
    pub density: Figure,
    /// Young's modulus, Pa.
    pub youngs_modulus: Figure,
    /// Poisson's ratio.
    pub poissons_ratio: Figure,
    /// Yield or 0.2 % proof strength, Pa; `None` for brittle irons, which have none.
    pub yield_strength: Option<Figure>,
    /// Cutting figures; `None` where none is known, and the user must give the force.
    pub cutting: Option<CuttingFigures>,
    /// Offered as a part material.
    pub part: bool,
    /// Offered as a jaw material.
    pub jaw: bool,
}

/// Every material, steels first.
///
/// ```
/// assert!(holdround_core::materials::all().filter(|m| m.jaw).count() >= 8);
/// ```
pub fn all() -> impl Iterator<Item = &'static Material> {
    steels::STEELS.iter().chain(castings::CASTINGS).chain(nonferrous::NONFERROUS).chain(plastics::PLASTICS)
}

/// The material of the given key, if there is one.
///
/// ```
/// let c45 = holdround_core::materials::find("carbon-steel-c45").map(|m| m.density.value);
/// assert_eq!(c45, Some(7850.0));
/// ```
#[must_use]
pub fn find(id: &str) -> Option<&'static Material> {
    all().find(|material| material.id == id)
}

const fn figure(value: f64, source: Source) -> Figure {
    Figure { value, source }
}

const fn cutting(specific_force: f64, exponent: f64, source: Source) -> Option<CuttingFigures> {
    Some(CuttingFigures { specific_force: figure(specific_force, source), exponent: figure(exponent, source) })
}

#[cfg(test)]
mod tests;
