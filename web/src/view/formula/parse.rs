//! Reading our own notation of formulae.
//!
//! `F_c` has a low index, `h^2` or `h²` an exponent. A space between factors multiplies; `/` divides what is
//! multiplied on its left by what is multiplied on its right. A letter stands for a quantity, several letters are a
//! word, and a bracket right after a name holds what it is a function of.

/// A piece of a formula.
#[derive(Debug, PartialEq, Eq)]
pub(super) enum Piece<'a> {
    Number(&'a str),
    Letter(&'a str),
    /// A letter with a bar over it.
    Barred(&'a str),
    /// Words as they stand.
    Words(&'a str),
    Sign(char),
    /// A sign of what follows it alone, as in −x.
    Prefix(char),
    /// Factors are multiplied.
    Times,
    /// A little room, as beside a word.
    Room,
    /// Of a function and what it is a function of.
    Of,
    Low(Box<Self>, &'a str),
    High(Box<Self>, Vec<Self>),
    /// Bracketed.
    Group(char, Vec<Self>, char),
    Over(Vec<Self>, Vec<Self>),
    Root(Vec<Self>),
}

/// The pieces of `text`; none if it is not of our notation.
pub(super) fn parse(text: &str) -> Option<Vec<Piece<'_>>> {
    let mut reader = Reader { rest: text, in_bars: false };
    let row = reader.row()?;
    reader.rest.is_empty().then_some(row)
}

struct Reader<'a> {
    rest: &'a str,
    /// Whether a bar would close.
    in_bars: bool,
}

impl<'a> Reader<'a> {
    fn next(&self) -> Option<char> {
        self.rest.chars().next()
    }

    /// Takes so many bytes.
    fn take(&mut self, bytes: usize) -> Option<&'a str> {
        let (taken, rest) = self.rest.split_at_checked(bytes)?;
        self.rest = rest;
        Some(taken)
    }

    /// Takes as long as `wanted` says so.
    fn take_while(&mut self, wanted: impl Fn(char) -> bool) -> &'a str {
        let end = self.rest.find(|c| !wanted(c)).unwrap_or(self.rest.len());
        self.take(end).unwrap_or_default()
    }

    fn took(&mut self, wanted: char) -> bool {
        let rest = self.rest.strip_prefix(wanted);
        self.rest = rest.unwrap_or(self.rest);
        rest.is_some()
    }

    /// Terms with signs between them, up to the end or a bracket that closes.
    fn row(&mut self) -> Option<Vec<Piece<'a>>> {
        let mut row = Vec::new();
        loop {
            let spaced = self.took(' ') || row.is_empty();
            let Some(next) = self.next() else { return Some(row) };
            if matches!(next, ')' | '⌉') || next == '|' && self.in_bars {
                return Some(row);
            }
            if matches!(next, '=' | '≈' | '≤' | '≥' | '+' | '−' | '±' | '∓' | ',') {
                self.take(next.len_utf8())?;
                row.push(if next == '−' && spaced && self.next() != Some(' ') {
                    Piece::Prefix(next)
                } else {
                    Piece::Sign(next)
                });
                row.extend(self.remark(next));
            } else {
                row.append(&mut self.quotient()?);
            }
        }
    }

    /// Words after a comma that go on to the end, such as what a quantity is counted in.
    fn remark(&mut self, after: char) -> Option<Piece<'a>> {
        let words = self.rest.strip_prefix(' ').filter(|words| after == ',' && words.chars().all(is_of_words))?;
        self.rest = "";
        Some(Piece::Words(words))
    }

    /// Products over products.
    fn quotient(&mut self) -> Option<Vec<Piece<'a>>> {
        let mut above = self.product()?;
        while self.rest.trim_start().starts_with('/') {
            self.took(' ');
            self.took('/');
            self.took(' ');
            above = vec![Piece::Over(above, self.product()?)];
        }
        Some(above)
    }

    /// Factors beside each other.
    fn product(&mut self) -> Option<Vec<Piece<'a>>> {
        let mut factors = vec![self.factor()?];
        loop {
            let spaced = self.rest.starts_with(' ');
            let next = self.rest.trim_start().chars().next();
            match next {
                Some(sign @ ('×' | '·')) => {
                    self.took(' ');
                    self.took(sign);
                    self.took(' ');
                    factors.push(Piece::Sign(sign));
                }
                Some(next) if begins_factor(next) && !(next == '|' && self.in_bars) => {
                    self.took(' ');
                    let factor = self.factor()?;
                    let words = [factors.last(), Some(&factor)].iter().any(|it| matches!(it, Some(Piece::Words(_))));
                    match factors.last() {
                        Some(Piece::Sign(_)) => {}
                        _ if words => factors.push(Piece::Room),
                        _ if spaced => factors.push(Piece::Times),
                        _ => {}
                    }
                    factors.push(factor);
                }
                _ => return Some(factors),
            }
        }
    }

    /// One factor with its indices and exponents.
    fn factor(&mut self) -> Option<Piece<'a>> {
        let mut factor = self.bare()?;
        loop {
            factor = match self.next() {
                Some('_') => {
                    self.took('_');
                    let end = self.index_end();
                    Piece::Low(Box::new(factor), self.take(end).filter(|index| !index.is_empty())?)
                }
                Some('₀'..='₉' | 'ᵢ') => Piece::Low(Box::new(factor), self.take('₀'.len_utf8())?),
                Some(high @ ('²' | '³')) => {
                    Piece::High(Box::new(factor), vec![Piece::Number(self.take(high.len_utf8())?)])
                }
                Some('^') => {
                    self.took('^');
                    Piece::High(Box::new(factor), if self.next()? == '(' { self.inside()? } else { vec![self.bare()?] })
                }
                _ => return Some(factor),
            };
            if self.next() == Some('(') && matches!(factor, Piece::Low(..)) {
                return self.of(factor);
            }
        }
    }

    /// Where an index ends: letters and digits, with points and commas between them.
    fn index_end(&self) -> usize {
        let within = |at: usize| self.rest.get(at + 1..).and_then(|rest| rest.chars().next());
        let end = self.rest.char_indices().find(|(at, c)| match c {
            '.' | ',' => !within(*at).is_some_and(is_of_index),
            c => !is_of_index(*c),
        });
        end.map_or(self.rest.len(), |(at, _)| at)
    }

    fn bare(&mut self) -> Option<Piece<'a>> {
        let next = self.next()?;
        Some(match next {
            '(' => Piece::Group('(', self.inside()?, ')'),
            '⌈' => {
                self.took('⌈');
                let inside = self.row()?;
                self.took('⌉').then_some(Piece::Group('⌈', inside, '⌉'))?
            }
            '|' => {
                self.took('|');
                self.in_bars = true;
                let inside = self.row()?;
                self.in_bars = false;
                self.took('|').then_some(Piece::Group('|', inside, '|'))?
            }
            '√' => {
                self.took('√');
                Piece::Root(if self.next()? == '(' { self.inside()? } else { vec![self.factor()?] })
            }
            'Σ' => Piece::Sign(self.take('Σ'.len_utf8())?.chars().next()?),
            '½' | '⅔' => Piece::Number(self.take(next.len_utf8())?),
            '0'..='9' => Piece::Number(self.take_while(|c| c.is_ascii_digit() || c == '.')),
            _ if next.is_ascii_alphabetic() => self.name()?,
            _ if is_greek(next) => Piece::Letter(self.take(next.len_utf8())?),
            _ => return None,
        })
    }

    /// What stands between round brackets.
    fn inside(&mut self) -> Option<Vec<Piece<'a>>> {
        self.took('(');
        let bars = std::mem::take(&mut self.in_bars);
        let inside = self.row()?;
        self.in_bars = bars;
        self.took(')').then_some(inside)
    }

    /// A letter, or words.
    fn name(&mut self) -> Option<Piece<'a>> {
        let end = self.rest.find(|c: char| !c.is_ascii_alphabetic()).unwrap_or(self.rest.len());
        // A d before a capital is a differential.
        let differential = end == 2
            && self.rest.strip_prefix('d').is_some_and(|rest| rest.starts_with(|c: char| c.is_ascii_uppercase()));
        let mut name = if end == 1 || differential {
            Piece::Letter(self.take(1)?)
        } else {
            let end = words_end(self.rest, end);
            Piece::Words(self.take(end)?)
        };
        if self.rest.starts_with('\u{304}')
            && let Piece::Letter(letter) = name
        {
            self.took('\u{304}');
            name = Piece::Barred(letter);
        }
        if self.next() == Some('(') { self.of(name) } else { Some(name) }
    }

    fn of(&mut self, function: Piece<'a>) -> Option<Piece<'a>> {
        let inside = self.inside()?;
        // One piece, so that an index or exponent behind it is of the whole.
        Some(Piece::Group('\0', vec![function, Piece::Of, Piece::Group('(', inside, ')')], '\0'))
    }
}

/// Where the words end whose first one ends at `end`: before the next single letter or name with an index.
fn words_end(text: &str, end: usize) -> usize {
    let mut end = end;
    while let Some(more) = text.get(end..).and_then(|rest| rest.strip_prefix(' ')) {
        let length = more.find(|c: char| !c.is_ascii_alphabetic()).unwrap_or(more.len());
        let followed = more.get(length..).is_some_and(|rest| rest.starts_with(['_', '(', '^']));
        let is_word = length > 1 && !followed;
        if !is_word {
            break;
        }
        end += 1 + length;
    }
    end
}

fn is_of_words(c: char) -> bool {
    c.is_ascii_alphabetic() || c == ' '
}

fn is_greek(c: char) -> bool {
    matches!(c, 'Α'..='ω' | 'ϑ' | 'ϕ')
}

fn is_of_index(c: char) -> bool {
    c.is_ascii_alphanumeric() || is_greek(c)
}

fn begins_factor(c: char) -> bool {
    is_of_index(c) || matches!(c, '(' | '⌈' | '|' | '√' | '½' | '⅔')
}
