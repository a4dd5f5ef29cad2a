//! A reader of lathe programs that shares nothing with the writer of the page.

/// One block as read: words by letter, in order.
pub type Block = Vec<(char, f64)>;

/// Reads word-address text after ISO 6983-1: comments in brackets, words of a letter and a number, `%` around all.
///
/// # Errors
/// What cannot be read, and its line.
pub fn read(program: &str) -> Result<Vec<Block>, String> {
    let body = program.strip_prefix("%\n").and_then(|rest| rest.strip_suffix("%\n")).ok_or("no % around it")?;
    let mut blocks = Vec::new();
    for line in body.lines() {
        let mut words = Block::new();
        let mut rest = line.trim();
        while let Some(first) = rest.chars().next() {
            if first == '(' {
                let end = rest.find(')').ok_or(format!("an open comment: {line}"))?;
                if rest[1..end].contains('(') {
                    return Err(format!("a comment in a comment: {line}"));
                }
                rest = rest[end + 1..].trim_start();
                continue;
            }
            if !first.is_ascii_uppercase() {
                return Err(format!("{first:?} is no address: {line}"));
            }
            let number: String = rest[1..].chars().take_while(|c| c.is_ascii_digit() || "+-.".contains(*c)).collect();
            let value = number.parse().ok().filter(|value: &f64| value.is_finite());
            words.push((first, value.ok_or_else(|| format!("{first}{number} is no word: {line}"))?));
            rest = rest[1 + number.len()..].trim_start();
        }
        if !words.is_empty() {
            blocks.push(words);
        }
    }
    Ok(blocks)
}

/// A move as a control makes it: from and to, radius and z in metres, and the feed, 0 for rapid.
#[derive(Clone, Copy, Debug)]
pub struct Motion {
    /// Where it begins.
    pub from: [f64; 2],
    /// Where it ends.
    pub to: [f64; 2],
    /// Its feed, m.
    pub feed: f64,
}

/// Runs the blocks as a lathe control would: modal words, absolute sizes, diameters on X; `unit` in metres.
///
/// # Errors
/// What no control would do, in words.
pub fn run(blocks: &[Block], unit: f64) -> Result<Vec<Motion>, String> {
    let (mut x, mut z): (Option<f64>, Option<f64>) = (None, None);
    let (mut rapid, mut feed, mut turning, mut ended) = (true, 0.0, false, false);
    let mut motions = Vec::new();
    for block in blocks {
        if ended {
            return Err("blocks after the end".into());
        }
        let (was_x, was_z) = (x, z);
        for &(letter, number) in block {
            match (letter, number as i64) {
                ('G', 0) => rapid = true,
                ('G', 1) => rapid = false,
                ('M', 3 | 4) => turning = true,
                ('M', 5) => turning = false,
                ('M', 30) => ended = true,
                ('G', 97) | ('N' | 'O' | 'S', _) => {}
                ('X', _) => x = Some(number * unit / 2.0),
                ('Z', _) => z = Some(number * unit),
                ('F', _) => feed = number * unit,
                _ => return Err(format!("no such word here: {letter}{number}")),
            }
        }
        if (x, z) == (was_x, was_z) {
            continue;
        }
        if !turning {
            return Err("a move with the spindle at rest".into());
        }
        if let (Some(fx), Some(fz), Some(tx), Some(tz)) = (was_x, was_z, x, z) {
            if !rapid && feed <= 0.0 {
                return Err("a cut without feed".into());
            }
            motions.push(Motion { from: [fx, fz], to: [tx, tz], feed: if rapid { 0.0 } else { feed } });
        } else if !rapid {
            return Err("a cut from nowhere".into());
        }
    }
    if ended { Ok(motions) } else { Err("no end".into()) }
}
