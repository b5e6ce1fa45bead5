//! Files that the person chooses or is handed.

use js_sys::Uint8Array;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Blob, BlobPropertyBag, File, FileReader, HtmlAnchorElement, Url};

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
    let options = BlobPropertyBag::new();
    options.set_type(media_type);
    let parts = js_sys::Array::of1(&JsValue::from_str(text));
    let url = Url::create_object_url_with_blob(&Blob::new_with_str_sequence_and_options(&parts, &options)?)?;
    let document = web_sys::window().and_then(|window| window.document()).ok_or(JsValue::NULL)?;
    let link: HtmlAnchorElement = document.create_element("a")?.unchecked_into();
    link.set_href(&url);
    link.set_download(name);
    link.click();
    Url::revoke_object_url(&url)
}
