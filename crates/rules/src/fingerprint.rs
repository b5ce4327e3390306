//! A short name for the bores of a panel, so that paper, file and panel can be matched.

use flapwright_model::card::Depth;
use flapwright_model::door::Side;

use crate::inspection::{Face, PanelReport};

/// The signs of a fingerprint: 32 of them, five bits each. Without `0` and `O`, `1` and `I`, which
/// are taken for each other on a dusty print.
const SIGNS: [char; 32] = [
    '2', '3', '4', '5', '6', '7', '8', '9', 'A', 'B', 'C', 'D', 'E', 'F', 'G', 'H', 'J', 'K', 'L',
    'M', 'N', 'P', 'Q', 'R', 'S', 'T', 'U', 'V', 'W', 'X', 'Y', 'Z',
];
/// Signs of one fingerprint: 40 bits.
const LENGTH: u32 = 8;

/// Start and factor of the 64-bit FNV-1a hash (Fowler, Noll, Vo; as in the IETF draft
/// draft-eastlake-fnv).
const FNV_START: u64 = 0xcbf2_9ce4_8422_2325;
const FNV_FACTOR: u64 = 0x0000_0100_0000_01b3;

/// Eight signs that stand for the bores of a panel: same bores, same fingerprint.
///
/// What goes into it: the drawn face, the panel's finished size and thickness, and of every bore
/// its place from the finished edges, diameter, depth, purpose and pass; lengths rounded to
/// 0.001 mm. Neither the panel's name and material nor the order and numbers of its bores count,
/// so that a renamed box keeps its fingerprints. Two different panels share one by chance about
/// once in a million million.
///
/// ```
/// use flapwright_rules::fingerprint::grouped;
///
/// assert_eq!(grouped("7KQ2MX4P"), "7KQ2-MX4P");
/// ```
#[must_use]
pub fn fingerprint(panel: &PanelReport) -> String {
    let mut hash = fnv_1a(text_of(panel).as_bytes());
    // The high bits are folded in: only the low 40 are printed.
    hash ^= hash >> 40;
    (0..LENGTH)
        .map(|place| {
            let five = (hash >> (5 * place)) & 31;
            // Five bits are always below 32.
            SIGNS.get(five as usize).copied().unwrap_or('2')
        })
        .collect()
}

/// A fingerprint as it is printed: in two groups of four.
#[must_use]
pub fn grouped(fingerprint: &str) -> String {
    let (first, second) = fingerprint.split_at_checked(4).unwrap_or((fingerprint, ""));
    if second.is_empty() {
        first.to_owned()
    } else {
        format!("{first}-{second}")
    }
}

/// All that counts, as one text: one line for the panel, one for each bore, in sorted order.
fn text_of(panel: &PanelReport) -> String {
    let face = match panel.face {
        Face::SideInner(Side::Left) => "left side",
        Face::SideInner(Side::Right) => "right side",
        Face::Underside => "underside",
        Face::DoorBack => "door back",
        Face::Plain => "plain",
    };
    let [u, v] = panel.size.map(micrometres);
    let mut bores: Vec<String> = panel
        .bores
        .iter()
        .map(|bore| {
            let (u, v) = bore.at.uv();
            let depth = match bore.drill.depth {
                Depth::Blind(depth) => micrometres(depth).to_string(),
                Depth::Through => "through".to_owned(),
            };
            format!(
                "{} {} {} {depth} {} {}",
                micrometres(u),
                micrometres(v),
                micrometres(bore.drill.diameter),
                bore.drill.pass,
                bore.drill.purpose
            )
        })
        .collect();
    bores.sort();
    let mut text = format!("{face} {u} {v} {}", micrometres(panel.thickness));
    for bore in &bores {
        text.push('\n');
        text.push_str(bore);
    }
    text
}

/// Whole thousandths of a millimetre; never a negative zero.
fn micrometres(length: f64) -> i64 {
    (length * 1000.0).round() as i64
}

fn fnv_1a(bytes: &[u8]) -> u64 {
    bytes.iter().fold(FNV_START, |hash, byte| {
        (hash ^ u64::from(*byte)).wrapping_mul(FNV_FACTOR)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Test vectors of FNV-1a, 64 bits, from draft-eastlake-fnv (restated from memory): the empty
    /// text, "a" and "foobar".
    #[test]
    fn the_hash_is_fnv_1a() {
        assert_eq!(fnv_1a(b""), 0xcbf2_9ce4_8422_2325);
        assert_eq!(fnv_1a(b"a"), 0xaf63_dc4c_8601_ec8c);
        assert_eq!(fnv_1a(b"foobar"), 0x8594_4171_f739_67e8);
    }

    #[test]
    fn no_two_signs_look_alike() {
        let mut signs = SIGNS.to_vec();
        signs.dedup();
        assert_eq!(signs.len(), 32);
        assert!(!SIGNS.iter().any(|sign| "0O1I".contains(*sign)));
    }
}
