//! Small programs there and back, whole, in pieces, and damaged on the way.

use super::*;

fn section(id: u8, content: &[u8]) -> Vec<u8> {
    let mut section = vec![id];
    let mut left = content.len();
    while left > 127 {
        section.push(left as u8 | 128);
        left >>= 7;
    }
    section.push(left as u8);
    section.extend(content);
    section
}

/// A program with every section that the build's programs have, whose one function is repeated, and of some data.
fn program(functions: u8, body: &[u8], data: &[u8]) -> Vec<u8> {
    assert!(functions < 128 && body.len() < 64, "sizes of one byte");
    let mut program = b"\0asm\x01\0\0\0".to_vec();
    program.extend(section(1, &[2, 0x60, 2, 0x7f, 0x7c, 1, 0x7f, 0x60, 0, 0]));
    program.extend(section(2, &[1, 1, b'_', 1, b'a', 0, 1]));
    program.extend(section(3, &[&[functions][..], &vec![0; functions.into()]].concat()));
    program.extend(section(5, &[1, 0, 1]));
    program.extend(section(6, &[1, 0x7f, 1, 0x41, 8, 0x0b]));
    program.extend(section(7, &[1, 1, b'b', 0, 1]));
    let function = [&[body.len() as u8 + 3, 1, 2, 0x7f][..], body].concat();
    program.extend(section(10, &[&[functions][..], &function.repeat(functions.into())].concat()));
    let size = [data.len() as u8 & 127 | 128, (data.len() >> 7) as u8];
    program.extend(section(11, &[&[1, 0, 0x41, 16, 0x0b][..], &size, data].concat()));
    program
}

/// (global.set 0 (i32.add (local.get 0) (i32.load offset=300 align=4 (local.tee 2 (i32.const -70))))), twice; calls; a block; a
/// number with a point; what can't be reached; and what it gives.
const BODY: &[u8] = &[
    0x20, 0, 0x41, 0xba, 0x7f, 0x22, 2, 0x28, 2, 0xac, 2, 0x6a, 0x24, 0, 0x10, 0, 0x02, 0x40, 0x20, 3, 0x0d, 0, 0x00,
    0x0b, 0x44, 0, 0, 0, 0, 0, 0, 0xf0, 0x3f, 0x1a, 0x20, 0, 0x0b,
];
const TEXT: &str = "Clean the screen before the storm.\x01Limpia la malla antes de la tormenta.\0Clean the tank.\x01Limpia el tanque.\0";

fn unpack(packed: &[u8], piece: usize) -> Result<Vec<u8>, Odd> {
    let mut work = Unpacking::default();
    for piece in packed.chunks(piece) {
        work.arrived().extend(piece);
        work.go_on(false)?;
    }
    work.go_on(true)?;
    work.finish()
}

#[test]
fn a_program_comes_back_whatever_pieces_it_comes_in() {
    let data = TEXT.repeat(90);
    for (functions, data) in [(1, &data[..]), (100, &data[..200]), (0, "")] {
        let program = program(functions, BODY, data.as_bytes());
        let packed = pack(&program).unwrap();
        for piece in [1, 7, 100, packed.len()] {
            assert!(
                unpack(&packed, piece).as_deref() == Ok(&program[..]),
                "{functions} functions in pieces of {piece}"
            );
        }
    }
}

#[test]
fn what_is_foretold_costs_little() {
    let once = pack(&program(1, BODY, b"")).unwrap().len();
    let often = pack(&program(100, BODY, b"")).unwrap().len();
    assert!(often < once + 99, "{once} and {often}: less than a byte for each further function");
    let text = TEXT.repeat(90);
    let packed = pack(&program(1, BODY, text.as_bytes())).unwrap().len();
    assert!(packed < once + TEXT.len() + 90, "{packed}: a text that was there costs less than a byte");
}

#[test]
fn damage_is_noticed_and_does_no_harm() {
    let program = program(20, BODY, TEXT.as_bytes());
    let packed = pack(&program).unwrap();
    for at in (0..packed.len()).step_by(13) {
        let mut damaged = packed.clone();
        damaged[at] ^= 0x40;
        // Some bytes settle nothing: how far ahead is read, and the last ones.
        let came = unpack(&damaged, packed.len());
        assert!(came.map_or_else(|odd| !odd.what.is_empty(), |other| other == program), "byte {at}");
        assert!(unpack(&packed[..at], packed.len()).is_err(), "cut at byte {at}");
    }
    assert!(unpack(&[], 1).is_err());
}

#[test]
fn what_is_no_such_program_is_refused_with_its_place() {
    let good = program(1, BODY, b"");
    assert_eq!(
        pack(&good[..good.len() - 1]).map(|_| ()),
        Err(Odd { at: good.len() - 1, what: "more than was announced" })
    );
    let unknown = program(1, &[0xff, 0x0b], b"");
    assert_eq!(pack(&unknown).unwrap_err().what, "an instruction that isn't known here");
    let local = program(1, &[0x20, 9, 0x0b], b"");
    assert_eq!(pack(&local).unwrap_err().what, "a local that isn't there");
    let index = program(1, &[0x10, 5, 0x0b], b"");
    assert_eq!(pack(&index).unwrap_err().what, "a type that isn't there");
}

/// Shannon's bound: no code of whole decisions has fewer than the entropy, and Huffman's less than one more.
#[test]
fn trees_are_within_one_decision_of_the_entropy() {
    let mut counts = Counts::new(1);
    let often = [40, 30, 11, 7, 5, 4, 2, 1];
    for (byte, times) in often.into_iter().enumerate() {
        for _ in 0..times {
            counts.add(0, byte as u8);
        }
    }
    let trees = counts.trees();
    let (mut entropy, mut decisions) = (0.0, 0.0);
    for (byte, times) in often.into_iter().enumerate() {
        let part = f64::from(times) / 100.0;
        let (length, way) = trees[0].way(byte as u8).unwrap();
        assert_eq!(trees[0].byte(length, way), Some(byte as u8));
        entropy -= part * part.log2();
        decisions += part * f64::from(length);
    }
    assert!(entropy <= decisions && decisions < entropy + 1.0, "{entropy} {decisions}");
    assert_eq!(trees[0].way(200), None);
}
