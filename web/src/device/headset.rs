//! The button of a headset, or of anything else that plays and pauses.
//!
//! A browser hands its presses only to a page that plays something, so the page
//! plays silence, made here: nothing is fetched. Where a browser lacks any of it
//! the button does nothing, and nothing fails.

use js_sys::{Array, Function, Reflect, Uint8Array};
use leptos::prelude::window;
use leptos::task::spawn_local;
use send_wrapper::SendWrapper;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{Blob, BlobPropertyBag, HtmlAudioElement, Url};

/// What a press may come as: headsets differ, and pressing twice is the next
/// track to most of them.
const PRESSES: [&str; 4] = ["play", "pause", "nexttrack", "stop"];

/// Samples a second. The least that every browser plays.
const RATE: u32 = 8000;
/// Browsers take what is shorter than five seconds for a mere signal, and give it
/// no buttons.
const SECONDS: u32 = 8;
/// Silence in samples of a byte.
const SILENCE: u8 = 0x80;

/// Listening for as long as it is kept.
pub struct Headset(SendWrapper<Listening>);

struct Listening {
    session: JsValue,
    audio: HtmlAudioElement,
    address: String,
    _heard: Closure<dyn FnMut()>,
}

impl Headset {
    /// Calls `pressed` at each press; nothing where the browser can't.
    #[must_use]
    pub fn listen(pressed: impl FnMut() + 'static) -> Option<Self> {
        let session = Reflect::get(&window().navigator(), &"mediaSession".into()).ok()?;
        if !session.is_object() {
            return None;
        }
        let address = silence()?;
        let Ok(audio) = HtmlAudioElement::new_with_src(&address) else {
            let _ = Url::revoke_object_url(&address);
            return None;
        };
        audio.set_loop(true);
        let heard = Closure::wrap(Box::new(pressed) as Box<dyn FnMut()>);
        for press in PRESSES {
            handle(&session, press, heard.as_ref());
        }
        let headset = Self(SendWrapper::new(Listening {
            session,
            audio,
            address,
            _heard: heard,
        }));
        headset.sound();
        Some(headset)
    }

    /// Plays the silence, unless it plays already. Browsers refuse it until
    /// somebody has pressed something on the page.
    pub fn sound(&self) {
        let audio = &self.0.audio;
        if !audio.paused() {
            return;
        }
        if let Ok(playing) = audio.play() {
            spawn_local(async move {
                // Refused: the next press on the page tries again.
                let _ = JsFuture::from(playing).await;
            });
        }
    }
}

impl Drop for Listening {
    fn drop(&mut self) {
        for press in PRESSES {
            handle(&self.session, press, &JsValue::NULL);
        }
        // What was being waited for is told that it was cut short, and is not told of.
        let _ = self.audio.pause();
        let _ = Url::revoke_object_url(&self.address);
    }
}

/// Has the browser call something at a press. One that does not know the press
/// says so by throwing, and goes without.
fn handle(session: &JsValue, press: &str, act: &JsValue) {
    let set = Reflect::get(session, &"setActionHandler".into());
    if let Some(set) = set.ok().and_then(|set| set.dyn_into::<Function>().ok()) {
        let _ = set.call2(session, &press.into(), act);
    }
}

/// The address of a piece of silence.
fn silence() -> Option<String> {
    let bytes = wave();
    let parts = Array::of1(&Uint8Array::from(bytes.as_slice()));
    let kind = BlobPropertyBag::new();
    kind.set_type("audio/wav");
    let blob = Blob::new_with_u8_array_sequence_and_options(&parts, &kind).ok()?;
    Url::create_object_url_with_blob(&blob).ok()
}

/// A wave file, one channel of one byte each (the format of 1991, as every
/// browser reads it).
fn wave() -> Vec<u8> {
    let samples = RATE * SECONDS;
    let mut bytes = Vec::new();
    let mut put = |part: &[u8]| bytes.extend_from_slice(part);
    put(b"RIFF");
    put(&(36 + samples).to_le_bytes());
    put(b"WAVEfmt ");
    put(&16_u32.to_le_bytes());
    // Plain samples, one channel.
    put(&1_u16.to_le_bytes());
    put(&1_u16.to_le_bytes());
    put(&RATE.to_le_bytes());
    // Bytes a second, bytes a sample, bits a sample.
    put(&RATE.to_le_bytes());
    put(&1_u16.to_le_bytes());
    put(&8_u16.to_le_bytes());
    put(b"data");
    put(&samples.to_le_bytes());
    bytes.resize(bytes.len() + (RATE * SECONDS) as usize, SILENCE);
    bytes
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_wave_is_as_long_as_its_head_says() {
        let wave = wave();
        let number = |at: usize| u32::from_le_bytes(wave[at..at + 4].try_into().unwrap());
        assert_eq!((&wave[..4], &wave[8..16]), (&b"RIFF"[..], &b"WAVEfmt "[..]));
        assert_eq!(number(4) as usize, wave.len() - 8);
        assert_eq!(number(40) as usize, wave.len() - 44);
        assert_eq!(number(28), number(24));
        assert!(wave[44..].iter().all(|sample| *sample == SILENCE));
    }
}
