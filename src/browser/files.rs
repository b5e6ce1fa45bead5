//! Files that the person chooses or is handed.

use js_sys::Uint8Array;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{
    Blob, BlobPropertyBag, CanvasRenderingContext2d, File, FileReader, HtmlAnchorElement, HtmlCanvasElement,
    HtmlImageElement, Url,
};

/// Reads a chosen file; `then` gets its bytes and its name. A file that the device can't read gives no bytes, which
/// the reader refuses in words.
pub fn read(file: File, then: Box<dyn FnOnce(Vec<u8>, String)>) {
    let name = file.name();
    let Ok(reader) = FileReader::new() else { return then(Vec::new(), name) };
    let ended = {
        let reader = reader.clone();
        Closure::once_into_js(move || {
            // What can't be read leaves no result: no bytes then.
            let bytes = reader.result().map(|buffer| Uint8Array::new(&buffer).to_vec()).unwrap_or_default();
            then(bytes, name);
        })
    };
    reader.set_onloadend(Some(ended.unchecked_ref()));
    // Fails only for a reader that is busy.
    let _ = reader.read_as_array_buffer(&file);
}

/// Hands the person a file.
pub(super) fn download(name: &str, media_type: &str, text: &str) {
    // Nothing here fails in a browser that runs this page; if it did there is no file, which the person sees.
    let _ = try_download(name, media_type, text);
}

fn try_download(name: &str, media_type: &str, text: &str) -> Result<(), JsValue> {
    save(name, &blob(media_type, text)?)
}

fn blob(media_type: &str, text: &str) -> Result<Blob, JsValue> {
    let options = BlobPropertyBag::new();
    options.set_type(media_type);
    Blob::new_with_str_sequence_and_options(&js_sys::Array::of1(&JsValue::from_str(text)), &options)
}

fn element(name: &str) -> Result<web_sys::Element, JsValue> {
    web_sys::window().and_then(|window| window.document()).ok_or(JsValue::NULL)?.create_element(name)
}

fn save(name: &str, blob: &Blob) -> Result<(), JsValue> {
    let url = Url::create_object_url_with_blob(blob)?;
    let link: HtmlAnchorElement = element("a")?.unchecked_into();
    link.set_href(&url);
    link.set_download(name);
    link.click();
    Url::revoke_object_url(&url)
}

/// Bitmaps have so many pixels for each one of the picture: sharp in print.
const SHARPNESS: u32 = 3;

/// Hands the person a picture, which is given as SVG, as PNG.
pub(super) fn download_bitmap(name: String, svg: &str, size: (u32, u32)) {
    // As above.
    let _ = try_download_bitmap(name, svg, size);
}

fn try_download_bitmap(name: String, svg: &str, (width, height): (u32, u32)) -> Result<(), JsValue> {
    let image: HtmlImageElement = element("img")?.unchecked_into();
    let url = Url::create_object_url_with_blob(&blob("image/svg+xml", svg)?)?;
    let loaded = {
        let (image, url) = (image.clone(), url.clone());
        Closure::once_into_js(move || {
            let _ = painted(&image, (width * SHARPNESS, height * SHARPNESS), name);
            let _ = Url::revoke_object_url(&url);
        })
    };
    image.set_onload(Some(loaded.unchecked_ref()));
    image.set_src(&url);
    Ok(())
}

fn painted(image: &HtmlImageElement, (width, height): (u32, u32), name: String) -> Result<(), JsValue> {
    let canvas: HtmlCanvasElement = element("canvas")?.unchecked_into();
    canvas.set_width(width);
    canvas.set_height(height);
    let context = canvas.get_context("2d")?.ok_or(JsValue::NULL)?;
    context.unchecked_into::<CanvasRenderingContext2d>().draw_image_with_html_image_element_and_dw_and_dh(
        image,
        0.0,
        0.0,
        width.into(),
        height.into(),
    )?;
    let done = Closure::once_into_js(move |blob: JsValue| {
        // A canvas too large for the device gives none.
        if !blob.is_null() {
            let _ = save(&name, blob.unchecked_ref());
        }
    });
    canvas.to_blob(done.unchecked_ref())
}
