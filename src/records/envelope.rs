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
    let mut hasher = crc32fast::Hasher::new();
    hasher.update(format!("{version} {generation}\n").as_bytes());
    hasher.update(content.as_bytes());
    hasher.finalize()
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
        assert_eq!(crc32fast::hash(b"123456789"), 0xcbf4_3926);
    }
}
