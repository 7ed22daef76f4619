//! Photos: kept small, sent along in one file, and said to be missing when they
//! are not there.

use serde_json::json;

use super::seeing::assert_it_is_for_everyone;
use crate::builds::sprayer;
use crate::page::Page;
use crate::rig::Rig;
use crate::wait::until;

/// A picture as a camera gives it, larger than what is kept: 24-bit BMP
/// (BITMAPINFOHEADER, as documented by its maker), rows from below.
fn large_picture() -> Vec<u8> {
    let (width, height) = (2400_u32, 1200_u32);
    let size = width * height * 3;
    let mut file = b"BM".to_vec();
    for number in [54 + size, 0, 54, 40, width, height] {
        file.extend_from_slice(&number.to_le_bytes());
    }
    file.extend_from_slice(&[1, 0, 24, 0]);
    for number in [0, size, 0, 0, 0, 0] {
        file.extend_from_slice(&u32::to_le_bytes(number));
    }
    for row in 0..height {
        for column in 0..width {
            file.extend_from_slice(&[(column / 10) as u8, (row / 5) as u8, 90]);
        }
    }
    file
}

/// The sizes of the photos that are shown, as the browser read them.
async fn shown(page: &Page) -> Vec<[u64; 2]> {
    let script = "return [...document.querySelectorAll('[data-test=log] [data-test=photo] img')]
        .filter((image) => image.complete)
        .map((image) => [image.naturalWidth, image.naturalHeight])";
    serde_json::from_value(page.script(script, vec![]).await).unwrap()
}

async fn wait_until_shown(page: &Page) {
    until("the photo to be shown", async || {
        (shown(page).await == [[1600, 800]]).then_some(())
    })
    .await;
}

/// The journal within a bundle: nothing in it is compressed, and the text
/// stands right behind its name.
fn journal_of(bundle: &[u8]) -> String {
    let name = b"build.thoubook.json";
    let start = bundle
        .windows(name.len())
        .position(|part| part == name)
        .unwrap()
        + name.len();
    let rest = &bundle[start..];
    let end = rest
        .windows(4)
        .position(|part| part == b"PK\x03\x04")
        .unwrap();
    String::from_utf8(rest[..end].to_vec()).unwrap()
}

each_engine!(a_photo_goes_out_with_the_build_and_comes_back);
async fn a_photo_goes_out_with_the_build_and_comes_back(rig: &mut Rig) {
    let page = rig.open().await;
    page.bring_in(&sprayer()).await;
    page.close_the_file().await;
    page.open_the_build().await;
    page.turn_to("Book").await;
    let picture = rig.write("camera.bmp", large_picture());
    let input = page.wait_for_test("take-photo").await;
    let before = page.acknowledged().await;
    input
        .send_keys(&picture.display().to_string())
        .await
        .unwrap();
    page.wait_until_acknowledged(before + 1).await;
    wait_until_shown(&page).await;
    assert_it_is_for_everyone(&page).await;

    page.to_the_bench().await;
    let counted = page.text_of("room-photos").await;
    assert!(counted.starts_with("Photos: 1, "), "{counted}");
    let bundle = rig.export_with_photos(&page).await;
    let jpeg = bundle
        .windows(3)
        .filter(|part| part == b"\xff\xd8\xff")
        .count();
    assert_eq!(jpeg, 1, "one picture, a JPEG");
    assert!(bundle.len() < 1_000_000, "{} bytes", bundle.len());
    let journal = journal_of(&bundle);
    assert!(journal.contains("\"kind\":\"photo-taken\""), "{journal}");

    // The bare journal brings no photo, and that is said.
    page.wipe().await;
    page.bring_in(&rig.write("bare.json", &journal)).await;
    page.close_the_file().await;
    page.open_the_build().await;
    page.turn_to("Book").await;
    page.wait_for_test("photo-missing").await;
    assert_eq!(
        shown(&page).await,
        Vec::<[u64; 2]>::new(),
        "wiped with its build"
    );
    page.to_the_bench().await;
    let counted = page.text_of("room-photos").await;
    assert!(counted.contains("is not on this device"), "{counted}");
    let without = rig.export_with_photos(&page).await;
    assert_eq!(journal_of_bare(&without), journal);

    // The whole file puts it in its place again.
    let said = page.bring_in(&rig.write("whole.zip", &bundle)).await;
    assert!(said.contains("One photo came with it"), "{said}");
    page.close_the_file().await;
    page.reload().await;
    page.wait_for_test("build").await;
    assert_eq!(rig.export_with_photos(&page).await, bundle, "byte for byte");
    page.open_the_build().await;
    page.turn_to("Book").await;
    wait_until_shown(&page).await;
    page.assert_no_trouble().await;
}

/// The journal of a bundle that has nothing else in it.
fn journal_of_bare(bundle: &[u8]) -> String {
    let name = b"build.thoubook.json";
    let start = bundle
        .windows(name.len())
        .position(|part| part == name)
        .unwrap()
        + name.len();
    let rest = &bundle[start..];
    // The list of contents begins behind the last entry.
    let end = rest
        .windows(4)
        .position(|part| part == b"PK\x01\x02")
        .unwrap();
    String::from_utf8(rest[..end].to_vec()).unwrap()
}

each_engine!(a_file_that_is_no_picture_is_refused_with_a_sentence);
async fn a_file_that_is_no_picture_is_refused_with_a_sentence(rig: &mut Rig) {
    let page = rig.open().await;
    page.bring_in(&sprayer()).await;
    page.close_the_file().await;
    page.open_the_build().await;
    page.turn_to("Book").await;
    let lines = "return document.querySelectorAll('[data-test=fact]').length";
    let before = page.script(lines, vec![]).await;
    let broken = rig.write("broken.jpg", b"\xff\xd8\xff no picture at all");
    let input = page.wait_for_test("take-photo").await;
    input
        .send_keys(&broken.display().to_string())
        .await
        .unwrap();
    page.wait_for_text("no picture that this browser can open")
        .await;
    assert_eq!(
        page.script(lines, vec![]).await,
        before,
        "nothing was written"
    );
    assert_ne!(before, json!(0));
}
