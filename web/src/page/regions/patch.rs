//! Markup put in the place of other markup by changing only what differs: an element that stays keeps the keyboard
//! and its motion, and the browser need not find its place again.

use std::borrow::Cow;
use std::iter;

use wasm_bindgen::JsCast;
use web_sys::{Element, Node};

use crate::root;

/// Elements that have nothing inside, of those the page has.
const EMPTY: [&str; 5] = ["br", "col", "hr", "img", "input"];
/// What takes typing keeps what was typed unless it is made anew, and so it is.
const TYPED_IN: [&str; 3] = ["input", "select", "textarea"];

/// Makes `element`, which shows `old`, show `new`. `replace` fills an element inside it whose content has another
/// shape. False when that would take the keyboard away, when something stays that takes typing, or when something else
/// than `old` is shown: then all of `element` is to be filled anew.
pub(super) fn patch(element: &Element, old: &str, new: &str, replace: impl Fn(&Element, &str)) -> bool {
    walk(element, old, new, replace).is_some()
}

/// An element on the way down to what is compared.
struct Level {
    /// The element, once it was looked for.
    node: Option<Node>,
    /// Which of its nodes comes next.
    next: u32,
    /// Where its content begins in the new markup.
    from: usize,
}

fn walk(element: &Element, old: &str, new: &str, replace: impl Fn(&Element, &str)) -> Option<()> {
    let (mut before, mut after) = (Tokens { markup: old, at: 0 }, Tokens { markup: new, at: 0 });
    let mut way = vec![Level { node: Some(element.clone().into()), next: 0, from: 0 }];
    loop {
        match (before.next(), after.next()) {
            (None, None) => return Some(()),
            (Some(Token::Text(was)), Some(Token::Text(is))) => {
                if was != is {
                    let text = child(&mut way).filter(|node| node.node_type() == Node::TEXT_NODE)?;
                    text.set_node_value(Some(&plain(is)));
                }
                way.last_mut()?.next += 1;
            }
            (Some(Token::Open(was)), Some(Token::Open(is))) if name(was) == name(is) => {
                (!TYPED_IN.contains(&name(is))).then_some(())?;
                let mut node = None;
                if was != is {
                    let element = child(&mut way)?.dyn_into::<Element>().ok()?;
                    (element.local_name() == name(is)).then_some(())?;
                    dress(&element, was, is);
                    node = Some(element.into());
                }
                if EMPTY.contains(&name(is)) {
                    way.last_mut()?.next += 1;
                } else {
                    way.push(Level { node, next: 0, from: after.at });
                }
            }
            (Some(Token::Close), Some(Token::Close)) => {
                way.pop();
                way.last_mut()?.next += 1;
            }
            (was, is) => {
                before.leave(was?)?;
                let end = after.leave(is?)?;
                let from = way.last()?.from;
                let element = found(&mut way)?.dyn_into::<Element>().ok()?;
                (way.len() > 1 && !root::focused().is_some_and(|focused| element.contains(Some(&focused))))
                    .then_some(())?;
                replace(&element, new.get(from..end)?);
                way.pop();
                way.last_mut()?.next += 1;
            }
        }
    }
}

/// The element that the way has come to.
fn found(way: &mut [Level]) -> Option<Node> {
    let (last, above) = way.split_last_mut()?;
    if last.node.is_none() {
        last.node = child(above);
    }
    last.node.clone()
}

/// The node that comes next in it.
fn child(way: &mut [Level]) -> Option<Node> {
    let next = way.last()?.next;
    found(way)?.child_nodes().item(next)
}

/// Gives an element the attributes of one tag in place of those of another.
fn dress(element: &Element, was: &str, is: &str) {
    for (name, value) in attributes(is) {
        if !attributes(was).any(|had| had == (name, value)) {
            let _set = element.set_attribute(name, &plain(value));
        }
    }
    for (name, _) in attributes(was) {
        if !attributes(is).any(|(kept, _)| kept == name) {
            let _gone = element.remove_attribute(name);
        }
    }
}

/// A piece of markup.
enum Token<'a> {
    Text(&'a str),
    /// What stands between the angles.
    Open(&'a str),
    Close,
}

/// Markup from one place on. What stands in it is escaped, so that every angle is one of a tag.
struct Tokens<'a> {
    markup: &'a str,
    at: usize,
}

impl Tokens<'_> {
    /// Goes on behind the end of the element that a token was found in, and tells where its content ends.
    fn leave(&mut self, token: Token<'_>) -> Option<usize> {
        let mut depth = 0_u32;
        let mut token = Some(token);
        loop {
            match token? {
                Token::Close if depth == 0 => return self.markup.get(..self.at)?.rfind('<'),
                Token::Close => depth -= 1,
                Token::Open(tag) if !EMPTY.contains(&name(tag)) => depth += 1,
                _ => {}
            }
            token = self.next();
        }
    }
}

impl<'a> Iterator for Tokens<'a> {
    type Item = Token<'a>;

    fn next(&mut self) -> Option<Token<'a>> {
        let rest = self.markup.get(self.at..).filter(|rest| !rest.is_empty())?;
        let Some(tag) = rest.strip_prefix('<') else {
            let text = rest.split('<').next()?;
            self.at += text.len();
            return Some(Token::Text(text));
        };
        let (tag, _) = tag.split_once('>')?;
        self.at += tag.len() + 2;
        Some(if tag.starts_with('/') { Token::Close } else { Token::Open(tag) })
    }
}

fn name(tag: &str) -> &str {
    tag.split(' ').next().unwrap_or(tag)
}

fn attributes(tag: &str) -> impl Iterator<Item = (&str, &str)> {
    let mut rest = tag.get(name(tag).len()..).unwrap_or_default();
    iter::from_fn(move || {
        let from = rest.strip_prefix(' ')?;
        let (name, after) = from.split_at_checked(from.find([' ', '=']).unwrap_or(from.len()))?;
        let (value, left) = after.strip_prefix("=\"").and_then(|value| value.split_once('"')).unwrap_or(("", after));
        rest = left;
        Some((name, value))
    })
}

/// What was escaped, as it is read.
fn plain(escaped: &str) -> Cow<'_, str> {
    if !escaped.as_bytes().contains(&b'&') {
        return escaped.into();
    }
    let mut pieces = escaped.split('&');
    let mut read = pieces.next().unwrap_or_default().to_owned();
    for piece in pieces {
        let (sign, rest) = piece.split_once(';').unwrap_or(("", piece));
        read.push_str(match sign {
            "lt" => "<",
            "gt" => ">",
            "quot" => "\"",
            _ => "&",
        });
        read.push_str(rest);
    }
    read.into()
}

#[cfg(test)]
mod tests {
    use super::*;
    use maud::html;

    #[test]
    fn a_tag_is_read_as_it_was_written() {
        let markup = html! { path class="a b" d="M0 0L1 2" hidden aria-label="5 > 4 & \"so\"" id="" {} }.into_string();
        let Some(Token::Open(tag)) = Tokens { markup: &markup, at: 0 }.next() else { panic!("it opens an element") };
        assert_eq!(name(tag), "path", "its name");
        let read: Vec<_> = attributes(tag).map(|(name, value)| (name, plain(value))).collect();
        let wanted =
            [("class", "a b"), ("d", "M0 0L1 2"), ("hidden", ""), ("aria-label", "5 > 4 & \"so\""), ("id", "")];
        assert_eq!(read, wanted.map(|(name, value)| (name, value.into())), "and its attributes");
    }

    #[test]
    fn the_content_of_an_element_ends_where_it_is_closed() {
        let markup = html! { p { "one" br; b { "two" } i {} } "three" }.into_string();
        let mut tokens = Tokens { markup: &markup, at: 0 };
        let opened = tokens.next();
        assert!(matches!(opened, Some(Token::Open("p"))), "it opens the element");
        let from = tokens.at;
        let first = tokens.next().expect("its first text");
        let end = tokens.leave(first).expect("its end");
        assert_eq!(markup.get(from..end), Some("one<br><b>two</b><i></i>"), "all that is in it");
        assert!(matches!(tokens.next(), Some(Token::Text("three"))), "and what follows comes next");
    }
}
