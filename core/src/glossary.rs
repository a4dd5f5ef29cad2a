//! Words of the trade, each defined once in our own words.
//!
//! ```
//! use holdround_core::glossary::{WORDS, Word, words_in};
//! let Word { word, .. } = words_in("Bore the soft jaws under load.").next().unwrap();
//! assert!(WORDS.iter().any(|known| known.word == *word));
//! ```

/// A word and what it means here.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Word {
    /// The word, as it stands in texts, in lower case.
    pub word: &'static str,
    /// What it means.
    pub says: &'static str,
}

const fn word(word: &'static str, says: &'static str) -> Word {
    Word { word, says }
}

/// Every word, by the alphabet.
pub const WORDS: [Word; 35] = [
    word("bell-mouth", "A bore wider at its mouth than inside, because the jaws open at the tip under load."),
    word("bluing", "Marking paste, spread thin on the face of the jaws: it rubs off where they bear."),
    word("bored", "Cut to size on the machine, in the chuck in which the jaws will be used."),
    word("boring bar", "The bar that carries the tool which bores the jaws."),
    word(
        "boring ring",
        "A ring that the jaws grip while they are bored, so that they are bored under load and without play.",
    ),
    word("chart", "The maker's curve of total grip over cylinder pressure."),
    word("cylinder", "The rotary cylinder behind the spindle, which moves the draw tube by oil pressure."),
    word("draw force", "The pull or push of the draw tube on the chuck."),
    word("draw tube", "The tube through the spindle by which the cylinder works the chuck."),
    word("grip", "The force with which the jaws press on the part; the total grip is the sum over all jaws."),
    word("grip gauge", "An instrument clamped in place of the part, which shows how hard the jaws press."),
    word("hold factor", "How many times the cutting load the grip can bear before the part slips, turns or tips."),
    word("indicator", "A dial or lever gauge that shows how far a surface moves as the part is turned by hand."),
    word("lobes", "Bulges around a part, as many as there are jaws, left when it springs back after release."),
    word("master jaw", "The jaw that belongs to the chuck, slides in its guideway, and carries the top jaw."),
    word("mesh", "The net of small pieces into which the part is divided to work out how it gives."),
    word("mid-stroke", "The middle of the way a jaw can move: jaws are best bored and used near it."),
    word("overhang", "How far the part, or the place of the cut, stands out in front of the jaws."),
    word("passive force", "The part of the cutting force that pushes the tool away from the machined surface."),
    word("pie jaws", "Soft jaws that together make a full circle, sawn apart: they wrap nearly the whole part."),
    word("plate", "The maker's plate on chuck or cylinder, with the greatest speed, grip and pressure."),
    word("plug", "A disc that the jaws open against while they are bored for an inside grip."),
    word("roundness", "How far a profile departs from a circle, from peak to valley (ISO 1101, ISO 12181)."),
    word("run-out", "How far an indicator swings over one turn of the part in the chuck."),
    word("seat", "The face at the bottom of the jaws' bore, on which the part rests along the axis."),
    word("serrations", "The teeth between master jaw and top jaw, which let it be set in steps of their pitch."),
    word("skim", "A light cut over the whole face of the jaws, just enough to make it true again."),
    word("soft jaws", "Top jaws of mild steel or aluminium, made to be bored to the size of the part."),
    word("stroke", "The way a jaw moves between fully open and fully closed."),
    word("swing", "The diameter of the circle that the outermost corner of the jaws describes."),
    word("taper", "A bore that is narrower at one end; bored in on purpose, it makes up for the opening of the jaws."),
    word("tip", "The front end of the jaw, away from the chuck; its base is the end at the seat."),
    word("tir", "Total indicator reading: the greatest less the least that an indicator shows over one turn."),
    word("window", "The pressures and speeds at which the part holds and comes out within its limits."),
    word("wrap", "The share of the part's circle that a jaw touches."),
];

/// The words that stand in `text`, by the alphabet.
///
/// ```
/// let words: Vec<_> = holdround_core::glossary::words_in("Run-out allowed (TIR)").map(|word| word.word).collect();
/// assert_eq!(words, ["run-out", "tir"]);
/// ```
pub fn words_in(text: &str) -> impl Iterator<Item = &'static Word> {
    let text = text.to_ascii_lowercase();
    WORDS.iter().filter(move |word| stands_in(word.word, &text))
}

/// Whether `word` stands in `text` as a whole word; both in lower case.
fn stands_in(word: &str, text: &str) -> bool {
    text.char_indices().filter_map(|(at, _)| text.split_at_checked(at)).any(|(before, from)| {
        from.strip_prefix(word).is_some_and(|after| {
            ![before.chars().next_back(), after.chars().next()].into_iter().flatten().any(is_of_word)
        })
    })
}

/// Whether a sign is part of a word: all but what parts words, of the signs that texts here are written in. (The tables
/// of every script's letters weigh more than the glossary.)
///
/// ```
/// let apart: Vec<&str> = "Ölfeder – 3. Seite".split(|sign| !holdround_core::glossary::is_of_word(sign)).collect();
/// assert_eq!(apart, ["Ölfeder", "", "", "3", "", "Seite"]);
/// ```
#[must_use]
pub fn is_of_word(sign: char) -> bool {
    sign.is_ascii_alphanumeric() || !matches!(sign, '\0'..='\u{bf}' | '\u{2000}'..='\u{206f}')
}

#[cfg(test)]
mod tests {
    use super::*;
    use alloc::string::String;

    #[test]
    fn the_words_are_by_the_alphabet_and_each_is_a_sentence() {
        assert!(WORDS.is_sorted_by(|a, b| a.word < b.word), "by the alphabet");
        for word in WORDS {
            assert!(word.says.ends_with('.') && word.says.len() > 30, "{} is explained", word.word);
            assert_eq!(word.word.to_lowercase(), word.word, "{} is in lower case", word.word);
        }
    }

    #[test]
    fn a_word_is_found_whole_and_only_whole() {
        let found = |text: &str| words_in(text).map(|word| word.word).collect::<alloc::vec::Vec<_>>();
        assert_eq!(found("Wraps and swings"), [""; 0], "part of a word is none");
        assert_eq!(found("The Wrap of one jaw."), ["wrap"], "capital or not");
        assert_eq!(found("plate"), ["plate"], "alone");
    }

    #[test]
    fn the_words_occur_where_people_read() {
        let mut texts = String::new();
        for input in crate::setup::every_input() {
            texts = texts + input.name + " " + input.help + " ";
        }
        let used = words_in(&texts).count();
        assert!(used >= 20, "{used} of the words stand in the texts of the inputs");
    }
}
