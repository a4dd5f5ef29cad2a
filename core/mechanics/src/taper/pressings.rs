//! How the jaws bore with the tapers looked at so far.

use alloc::vec::Vec;
use core::cell::RefCell;

use crate::contact::Contact;

/// Tapers (m per side) that jaws were pressed with so far, and how they then bore: another is found quicker from the
/// nearest. What is found does not depend on them.
#[derive(Debug, Default)]
pub struct Pressings {
    kept: RefCell<Vec<(f64, Contact)>>,
}

impl Pressings {
    /// Begins with jaws known to bear like this with a taper.
    #[must_use]
    pub fn from_one(taper: f64, contact: Contact) -> Self {
        Self { kept: RefCell::new([(taper, contact)].into()) }
    }

    /// What `press` finds from the contact with the nearest taper, the latest of those with the same.
    pub(super) fn press<E>(
        &self,
        taper: f64,
        press: impl FnOnce(Option<&Contact>) -> Result<Contact, E>,
    ) -> Result<Contact, E> {
        let off = |kept: &&(f64, Contact)| libm::fabs(kept.0 - taper);
        let kept = self.kept.borrow();
        let nearest = kept.iter().rev().min_by(|a, b| off(a).total_cmp(&off(b)));
        let contact = press(nearest.map(|(_, contact)| contact))?;
        drop(kept);
        self.kept.borrow_mut().push((taper, contact.clone()));
        Ok(contact)
    }
}
