//! Making a picture small before it is kept.

use js_sys::{Promise, Uint8Array};
use leptos::prelude::document;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{Blob, CanvasRenderingContext2d, File, HtmlCanvasElement, HtmlImageElement, Url};

/// The longest side of a photo that is kept: a stamped number can still be read.
const LONGEST: f64 = 1600.0;
/// How closely it keeps to the original, from 0 to 1. Ours.
const QUALITY: f64 = 0.8;

const NO_PICTURE: &str = "This is no picture that this browser can open. Take it as JPEG or PNG.";

/// The bytes of a JPEG with its longest side at most 1600 pixels. It is drawn
/// anew, so that where it was taken and with which camera is left behind.
///
/// # Errors
/// A sentence, when the file is no picture.
pub async fn shrink(file: &File) -> Result<Vec<u8>, String> {
    let address = Url::create_object_url_with_blob(file).map_err(|_| NO_PICTURE.to_owned())?;
    let drawn = draw(&address).await;
    let _ = Url::revoke_object_url(&address);
    drawn
}

async fn draw(address: &str) -> Result<Vec<u8>, String> {
    let no_picture = |_: JsValue| NO_PICTURE.to_owned();
    // An image element turns a photo upright as the camera noted it.
    let image = HtmlImageElement::new().map_err(no_picture)?;
    image.set_src(address);
    JsFuture::from(image.decode()).await.map_err(no_picture)?;
    let (width, height) = size(
        f64::from(image.natural_width()),
        f64::from(image.natural_height()),
    );
    let canvas: HtmlCanvasElement = document()
        .create_element("canvas")
        .map_err(no_picture)?
        .unchecked_into();
    canvas.set_width(width);
    canvas.set_height(height);
    let pen: CanvasRenderingContext2d = canvas
        .get_context("2d")
        .map_err(no_picture)?
        .ok_or(NO_PICTURE)?
        .unchecked_into();
    // JPEG knows no glass: what can be seen through turns white, not black.
    pen.set_fill_style_str("#fff");
    pen.fill_rect(0.0, 0.0, f64::from(width), f64::from(height));
    pen.draw_image_with_html_image_element_and_dw_and_dh(
        &image,
        0.0,
        0.0,
        f64::from(width),
        f64::from(height),
    )
    .map_err(no_picture)?;
    let drawn = Promise::new(&mut |done, failed| {
        let asked = canvas.to_blob_with_type_and_encoder_options(
            &done,
            "image/jpeg",
            &JsValue::from_f64(QUALITY),
        );
        if asked.is_err() {
            let _ = failed.call0(&JsValue::NULL);
        }
    });
    let blob: Blob = JsFuture::from(drawn)
        .await
        .map_err(no_picture)?
        .dyn_into()
        .map_err(no_picture)?;
    let buffer = JsFuture::from(blob.array_buffer())
        .await
        .map_err(no_picture)?;
    Ok(Uint8Array::new(&buffer).to_vec())
}

/// Width and height of what is kept, in whole pixels, at least one each way.
fn size(width: f64, height: f64) -> (u32, u32) {
    let scale = (LONGEST / width.max(height).max(1.0)).min(1.0);
    let whole = |side: f64| (side * scale).round().max(1.0) as u32;
    (whole(width), whole(height))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_picture_keeps_its_shape_and_never_grows() {
        assert_eq!(size(4000.0, 3000.0), (1600, 1200));
        assert_eq!(size(3000.0, 4000.0), (1200, 1600));
        assert_eq!(size(800.0, 600.0), (800, 600));
        assert_eq!(size(9000.0, 1.0), (1600, 1));
        assert_eq!(size(0.0, 0.0), (1, 1));
    }
}
