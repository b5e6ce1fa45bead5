//! One kept text: which version wrote it, which generation it is, and a checksum over all of it.
//!
//! The form is one line, `eavewater VERSION GENERATION CHECKSUM`, then the content. The checksum is CRC-32 (ISO-HDLC,
//! as in PNG and gzip) of `VERSION GENERATION` and the content, in eight hexadecimal digits.

/// What was in an envelope.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Opened {
    /// The version of the shapes in the content.
    pub version: u32,
    /// Counts up with each time the record is written.
    pub generation: u64,
    /// The content.
    pub content: String,
}

/// The envelope is torn, altered or not one of ours.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Damaged;

const MARK: &str = "eavewater";

/// Seals a content.
pub fn seal(version: u32, generation: u64, content: &str) -> String {
    format!("{MARK} {version} {generation} {:08x}\n{content}", checksum(version, generation, content))
}

/// Opens an envelope.
///
/// # Errors
/// [`Damaged`] unless every byte is as it was sealed.
pub fn open(text: &str) -> Result<Opened, Damaged> {
    let (line, content) = text.split_once('\n').ok_or(Damaged)?;
    let mut words = line.split(' ');
    let mut word = || words.next().ok_or(Damaged);
    if word()? != MARK {
        return Err(Damaged);
    }
    let version = word()?.parse().map_err(|_| Damaged)?;
    let generation = word()?.parse().map_err(|_| Damaged)?;
    let written = word()?;
    if words.next().is_some() || written != format!("{:08x}", checksum(version, generation, content)) {
        return Err(Damaged);
    }
    Ok(Opened { version, generation, content: content.to_owned() })
}

fn checksum(version: u32, generation: u64, content: &str) -> u32 {
    crc_32(format!("{version} {generation}\n").bytes().chain(content.bytes()))
}

/// CRC-32 with the polynomial 0x04C11DB7, reflected, of ITU-T V.42 (2002), 8.1.1.6.2. Half a byte at a time: the tables of
/// quicker ways are 16 kB that no compression makes smaller.
pub fn crc_32(bytes: impl Iterator<Item = u8>) -> u32 {
    const STEPS: [u32; 16] = {
        let mut steps = [0; 16];
        let mut half = 0;
        while half < 16 {
            let mut step = half as u32;
            let mut bit = 0;
            while bit < 4 {
                step = (step >> 1) ^ (0xedb8_8320 * (step & 1));
                bit += 1;
            }
            steps[half] = step;
            half += 1;
        }
        steps
    };
    let half = |crc: u32| (crc >> 4) ^ STEPS[crc as usize & 15];
    !bytes.fold(!0, |crc, byte| half(half(crc ^ u32::from(byte))))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_was_sealed_opens() {
        let text = seal(1, 7, "{\"a\":\n1}");
        assert_eq!(open(&text), Ok(Opened { version: 1, generation: 7, content: "{\"a\":\n1}".to_owned() }));
    }

    #[test]
    fn any_byte_changed_or_lost_is_noticed() {
        let text = seal(1, 7, "{\"litres\":1700}");
        for at in 0..text.len() {
            assert_eq!(open(&text[..at]), Err(Damaged), "cut at {at}");
            let mut bytes = text.clone().into_bytes();
            bytes[at] ^= 1;
            assert_eq!(
                String::from_utf8(bytes).map_err(|_| Damaged).and_then(|text| open(&text)),
                Err(Damaged),
                "{at}"
            );
        }
    }

    #[test]
    fn the_checksum_is_the_published_one() {
        // CRC-32/ISO-HDLC of "123456789" is cbf43926 (catalogue of parametrised CRC algorithms, from memory).
        assert_eq!(crc_32(b"123456789".iter().copied()), 0xcbf4_3926);
        let bytes: Vec<u8> = (0..1000_u32).map(|at| ((at * at) >> 3) as u8).collect();
        for end in 0..bytes.len() {
            assert_eq!(crc_32(bytes[..end].iter().copied()), crc32fast::hash(&bytes[..end]), "{end} bytes");
        }
    }
}
