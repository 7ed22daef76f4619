//! A bundle comes back as it was; what is missing or altered is said.

use super::*;
use crate::fact::Photo;
use crate::fact::samples::{Pen, sprayer};
use crate::id::BuildId;

/// Written by Python 3 (`zipfile`, stored) from the fixture and its one photo;
/// the script is `fixtures/make_bundle.py`.
const BY_PYTHON: &[u8] = include_bytes!("../../fixtures/bundle-by-python-1.zip");

const EVENING: &str = include_str!("../../fixtures/shed-evening-1.json");

const PIECE: &[u8] = b"\xff\xd8\xff\xe0 main cap 3, stripe across bolt and cap";

fn photo(bytes: &[u8]) -> Body {
    Body::Photo(Photo {
        hash: digest(bytes),
        media: "image/jpeg".to_owned(),
        bytes: u32::try_from(bytes.len()).unwrap(),
        step: Some("crank-in".to_owned()),
        place: None,
        words: Some("../../stripe".to_owned()),
    })
}

fn journal(photos: &[&[u8]]) -> Journal {
    let mut pen = Pen::new(1);
    let mut journal = Journal::new(BuildId::from_random(7));
    journal.take(pen.write(sprayer()));
    for bytes in photos {
        journal.take(pen.write(photo(bytes)));
    }
    journal
}

fn at_hand(photos: &[&[u8]]) -> BTreeMap<String, Vec<u8>> {
    photos
        .iter()
        .map(|bytes| (digest(bytes), bytes.to_vec()))
        .collect()
}

#[test]
fn the_digest_is_sha_256() {
    // Source: FIPS 180-2, appendix B.1, the message "abc".
    assert_eq!(
        digest(b"abc"),
        "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
    );
}

#[test]
fn a_bundle_comes_back_with_its_photos_and_packs_to_the_same_bytes() {
    let journal = journal(&[PIECE, b"other"]);
    let photos = at_hand(&[PIECE, b"other", b"of another build"]);
    let (file, missing) = pack(&journal, &photos).unwrap();
    assert!(missing.is_empty() && is_bundle(&file) && !is_bundle(export(&journal).as_bytes()));
    let back = unpack(&file).unwrap();
    assert_eq!(back.imported.journal, journal);
    assert_eq!(back.photos.len(), 2);
    assert_eq!(back.photos[&digest(PIECE)], PIECE);
    assert!(back.missing.is_empty() && back.strange.is_empty());
    let kept = back
        .photos
        .iter()
        .map(|(hash, bytes)| (hash.clone(), bytes.to_vec()));
    assert_eq!(
        pack(&back.imported.journal, &kept.collect()).unwrap().0,
        file
    );
}

#[test]
fn a_missing_photo_is_said_on_both_ends_and_is_no_error() {
    let journal = journal(&[PIECE, b"lost"]);
    let (file, missing) = pack(&journal, &at_hand(&[PIECE])).unwrap();
    let lost = BTreeSet::from([digest(b"lost")]);
    assert_eq!(missing, lost);
    let back = unpack(&file).unwrap();
    assert_eq!(back.missing, lost);
    assert_eq!(back.imported.journal, journal);
}

#[test]
fn an_altered_photo_is_strange_and_missing_and_the_rest_comes_in() {
    let journal = journal(&[PIECE]);
    let (mut file, _) = pack(&journal, &at_hand(&[PIECE])).unwrap();
    let at = file
        .windows(PIECE.len())
        .position(|window| window == PIECE)
        .unwrap();
    file[at + 5] ^= 1;
    let back = unpack(&file).unwrap();
    assert!(back.photos.is_empty());
    assert_eq!(back.missing.len(), 1);
    assert!(back.strange[0].starts_with("photos/"));
    // Written anew with a right checksum it is still not the photo it was.
    let other = zip::write(&[
        (JOURNAL, export(&journal).as_bytes()),
        ("photos/a.jpg", b"altered"),
    ]);
    let other = other.unwrap();
    let back = unpack(&other).unwrap();
    assert_eq!((back.strange.len(), back.missing.len()), (1, 1));
}

#[test]
fn a_file_that_another_program_zipped_is_read_as_well() {
    let back = unpack(BY_PYTHON).unwrap();
    let journal = import(EVENING.as_bytes()).unwrap().journal;
    assert_eq!(back.imported.journal, journal);
    assert_eq!(back.photos[&digest(PIECE)], PIECE);
    assert!(back.missing.is_empty() && back.strange.is_empty());
    // And ours differs from it in nothing that a reader looks at.
    let (ours, _) = pack(&journal, &at_hand(&[PIECE])).unwrap();
    assert_eq!(unpack(&ours).unwrap().imported.journal, journal);
}

#[test]
fn no_cut_and_no_flipped_byte_makes_it_panic_or_bring_in_a_wrong_photo() {
    let journal = journal(&[PIECE]);
    let (file, _) = pack(&journal, &at_hand(&[PIECE])).unwrap();
    for end in 0..file.len() {
        assert!(unpack(&file[..end]).is_err());
    }
    for at in 0..file.len() {
        for flip in [1, 0x80, 0xff] {
            let mut broken = file.clone();
            broken[at] ^= flip;
            if let Ok(back) = unpack(&broken) {
                for (hash, bytes) in back.photos {
                    assert_eq!(digest(bytes), hash);
                }
            }
        }
    }
}

#[test]
fn what_is_no_bundle_says_so() {
    let said = |file: &[u8]| unpack(file).unwrap_err().to_string();
    assert!(said(b"").contains("stops before its end"));
    let empty = zip::write(&[]).unwrap();
    assert!(said(&empty).contains(JOURNAL));
    let text = zip::write(&[(JOURNAL, b"scribble")]).unwrap();
    assert!(matches!(unpack(&text), Err(BundleError::Journal(_))));
    let mut packed = zip::write(&[("a", b"b")]).unwrap();
    let central = packed
        .windows(4)
        .position(|four| four == b"PK\x01\x02")
        .unwrap();
    packed[central + 10] = 8;
    assert!(said(&packed).contains("“a” is compressed"));
}

#[test]
fn names_of_entries_stay_in_their_folder() {
    let Body::Photo(mut photo) = photo(PIECE) else {
        panic!()
    };
    photo.hash = "../../etc/<b>".to_owned();
    photo.media = "../x".to_owned();
    assert_eq!(name_of(&photo), "photos/etcb.bin");
}
