use super::*;

fn stacked(text: &str) -> String {
    parse::parse(text).map(|pieces| write::row(&pieces, Quotient::Stacked).into_string()).unwrap_or_default()
}

#[test]
fn indices_exponents_quotients_and_roots_are_written_as_mathematics() {
    let cases = [
        ("F_c", "<msub><mi>F</mi><mtext>c</mtext></msub>"),
        ("F₀", "<msub><mi>F</mi><mn>0</mn></msub>"),
        ("ω²", "<msup><mi>ω</mi><mn>2</mn></msup>"),
        ("h^(−x)", "<msup><mi>h</mi><mrow><mo form=\"prefix\">−</mo><mi>x</mi></mrow></msup>"),
        ("a / (b c)", "<mfrac><mi>a</mi><mrow><mi>b</mi><mo>\u{2062}</mo><mi>c</mi></mrow></mfrac>"),
        ("√(a / b)", "<msqrt><mfrac><mi>a</mi><mi>b</mi></mfrac></msqrt>"),
        ("F at rest", "<mrow><mi>F</mi><mspace width=\"0.3em\"></mspace><mtext>at rest</mtext></mrow>"),
        ("p\u{304}", "<mover accent=\"true\"><mi>p</mi><mo>¯</mo></mover>"),
        (
            "2 |u_n|",
            "<mrow><mn>2</mn><mo>\u{2062}</mo><mrow><mo>|</mo><msub><mi>u</mi><mi>n</mi></msub><mo>|</mo></mrow></mrow>",
        ),
        ("s, per side", "<mrow><mi>s</mi><mo>,</mo><mtext>per side</mtext></mrow>"),
        ("F_d,max", "<msub><mi>F</mi><mtext>d,max</mtext></msub>"),
    ];
    for (text, expected) in cases {
        assert_eq!(stacked(text), expected, "{text}");
    }
    let in_line = symbol("(a + b) / 2").into_string();
    assert!(in_line.contains("<mo>(</mo>") && in_line.contains("<mo>/</mo>"), "in the line brackets stay: {in_line}");
}

#[test]
fn a_product_binds_closer_than_a_stroke_and_a_stroke_closer_than_a_sign() {
    let whole = stacked("a b / c + d");
    let fraction = "<mfrac><mrow><mi>a</mi><mo>\u{2062}</mo><mi>b</mi></mrow><mi>c</mi></mfrac>";
    assert_eq!(whole, format!("<mrow>{fraction}<mo>+</mo><mi>d</mi></mrow>"), "(a b)/c + d");
}

#[test]
fn what_is_not_of_our_notation_stands_as_it_is() {
    for text in ["a^(b", "a)", "((", "|a", "a _", "<b>", "a # b"] {
        assert!(parse::parse(text).is_none(), "{text} is refused");
        let shown = text.replace('<', "&lt;").replace('>', "&gt;");
        assert!(displayed(text).into_string().contains(&shown), "{text} is still shown, and cannot become markup");
        assert_eq!(symbol(text).into_string(), format!("<math><mtext>{shown}</mtext></math>"), "{text} among words");
    }
}

#[test]
fn prose_stands_beside_the_mathematics_so_that_a_line_can_be_broken() {
    let shown = displayed("a = peak to valley of b").into_string();
    assert!(shown.contains("</math> peak to valley of <math"), "prose is no mathematics: {shown}");
}

/// The text without what the notation has for structure: spaces, brackets, strokes, marks of index and exponent.
fn bare(text: &str) -> String {
    let plain = text.chars().map(|c| match c {
        '²' => '2',
        '³' => '3',
        'ᵢ' => 'i',
        '₀'..='₉' => char::from_digit(u32::from(c) - u32::from('₀'), 10).unwrap(),
        '\u{304}' => '¯',
        c => c,
    });
    plain.filter(|c| !c.is_whitespace() && !"()/_^√\u{2061}\u{2062}".contains(*c)).collect()
}

fn assert_nothing_is_lost(text: &str) {
    assert!(parse::parse(text).is_some(), "{text} is of our notation");
    for markup in [displayed(text), symbol(text)] {
        let markup = markup.into_string();
        let document = roxmltree::Document::parse(&markup).unwrap_or_else(|error| panic!("{text}: {error}: {markup}"));
        let shown: String = document.descendants().filter_map(|node| node.is_text().then(|| node.text())?).collect();
        assert_eq!(bare(&shown), bare(text), "nothing of {text} is lost in {markup}");
        let elements = document.descendants().filter(roxmltree::Node::is_element);
        for element in elements {
            let needs = match element.tag_name().name() {
                "mfrac" | "msub" | "msup" | "mover" => 2,
                _ => continue,
            };
            assert_eq!(element.children().count(), needs, "{text}: {} has its parts", element.tag_name().name());
        }
    }
}

#[test]
fn every_formula_of_the_worked_examples_is_read_whole() {
    let mut seen = std::collections::BTreeSet::new();
    for example in holdround_core::examples::EXAMPLES {
        let entries = crate::document::entries(example.json).unwrap();
        let setup = holdround_core::setup::Setup::read(&entries).unwrap();
        for step in holdround_core::evaluate(&setup).findings.iter().flat_map(|finding| &finding.steps) {
            seen.insert(step.formula);
            seen.extend(step.given.iter().map(|term| term.symbol));
            seen.insert(step.result.symbol);
        }
    }
    assert!(seen.len() > 80, "the examples have many formulae: {}", seen.len());
    for text in seen {
        assert_nothing_is_lost(text);
    }
}

/// What no example reaches is found in the source itself.
#[cfg(not(target_arch = "wasm32"))]
#[test]
fn every_formula_in_the_source_is_read_whole() {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../core/src/evaluate");
    let mut files: Vec<_> = vec![std::path::PathBuf::from(folder)];
    let mut count = 0;
    while let Some(path) = files.pop() {
        if path.is_dir() {
            files.extend(std::fs::read_dir(path).unwrap().map(|entry| entry.unwrap().path()));
            continue;
        }
        let source = std::fs::read_to_string(&path).unwrap();
        for (marker, closing) in [("formula:", ",\n"), ("term(", ",")] {
            for found in source.split(marker).skip(1) {
                let stretch = &found[..found.find(closing).unwrap_or(0)];
                for text in stretch.split('"').skip(1).step_by(2) {
                    count += 1;
                    assert_nothing_is_lost(text);
                }
            }
        }
    }
    assert!(count > 250, "formulae and symbols were found: {count}");
}
