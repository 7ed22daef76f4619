//! What a phone can do besides being looked at: a sound, a buzz, a voice, and
//! staying awake. What a browser lacks is missed nowhere: nothing here fails.

use std::cell::RefCell;

use js_sys::{Function, Promise, Reflect};
use leptos::prelude::*;
use leptos::task::spawn_local;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{AudioContext, OscillatorType, SpeechSynthesis, SpeechSynthesisUtterance};

use super::local;
use super::painted::painted;

const SOUND: &str = "thoubook-setting/sound";
const VOICE: &str = "thoubook-setting/voice";
const HEADSET: &str = "thoubook-setting/headset";

/// What is meant by a sound.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Sound {
    /// A pull was taken down.
    Taken,
    /// The last pull of a lap was.
    LapDone,
    /// A press was not taken: it came too soon after another.
    Refused,
}

impl Sound {
    /// Tones in hertz, one after the other.
    const fn tones(self) -> &'static [f32] {
        match self {
            Self::Taken => &[880.0],
            Self::LapDone => &[660.0, 880.0, 1320.0],
            Self::Refused => &[180.0],
        }
    }

    /// The buzz, milliseconds on and off by turns.
    const fn buzz(self) -> &'static [u32] {
        match self {
            Self::Taken => &[70],
            Self::LapDone => &[70, 60, 70, 60, 160],
            Self::Refused => &[30, 30, 30],
        }
    }
}

/// Seconds a tone lasts.
const TONE: f64 = 0.09;
/// How loud: a garage is loud, a phone's speaker is not.
const LOUDNESS: f32 = 0.4;

thread_local! {
    // Made by the first press, or after one: browsers let nothing sound before.
    static AUDIO: RefCell<Option<AudioContext>> = const { RefCell::new(None) };
}

/// The senses that the person has switched on.
#[derive(Clone, Copy)]
pub struct Senses {
    sound: RwSignal<bool>,
    voice: RwSignal<bool>,
    headset: RwSignal<bool>,
}

impl Senses {
    /// As they were left: at first sound on, voice off, headset off.
    #[must_use]
    pub fn load() -> Self {
        Self {
            sound: RwSignal::new(local::get(SOUND).as_deref() != Some("off")),
            voice: RwSignal::new(local::get(VOICE).as_deref() == Some("on")),
            headset: RwSignal::new(local::get(HEADSET).as_deref() == Some("on")),
        }
    }

    /// Whether it sounds and buzzes; followed.
    #[must_use]
    pub fn sounds(self) -> bool {
        self.sound.get()
    }

    /// Whether it speaks; followed.
    #[must_use]
    pub fn speaks(self) -> bool {
        self.voice.get()
    }

    /// Whether the button of a headset is listened to; followed.
    #[must_use]
    pub fn hears_the_headset(self) -> bool {
        self.headset.get()
    }

    /// Switches listening to the button of a headset.
    pub fn switch_headset(self) {
        switch(self.headset, HEADSET);
    }

    /// Switches sound and buzz.
    pub fn switch_sound(self) {
        switch(self.sound, SOUND);
    }

    /// Switches the voice.
    pub fn switch_voice(self) {
        switch(self.voice, VOICE);
        if !self.voice.get_untracked() {
            hush();
        }
    }

    /// Makes itself heard and felt.
    pub fn signal(self, sound: Sound) {
        if self.sound.get_untracked() {
            buzz(sound.buzz());
            if is_running() {
                // Nobody hears the frame that it is late by; all would see it.
                spawn_local(async move {
                    painted().await;
                    let _ = play(sound.tones());
                });
            } else {
                // Only within a press may it begin.
                let _ = play(sound.tones());
            }
        }
    }

    /// Makes ready what sounds, which takes a while, so that the first press need
    /// not wait for it. Before anything was pressed on the page it must not.
    pub fn make_ready(self) {
        if self.sound.get_untracked() && was_pressed() {
            spawn_local(async {
                painted().await;
                let _ = with_audio(|_| Ok(()));
            });
        }
    }

    /// Says it, when the voice is on. What it was saying is cut short: the
    /// newest number is the one that counts.
    pub fn say(self, words: &str) {
        if self.voice.get_untracked() {
            hush();
            let said = SpeechSynthesisUtterance::new_with_text(words);
            if let (Some(voice), Ok(said)) = (voice(), said) {
                said.set_lang("en");
                voice.speak(&said);
            }
        }
    }
}

fn switch(signal: RwSignal<bool>, key: &str) {
    let on = !signal.get_untracked();
    // Not kept means asked again next time, and no more.
    let _ = local::put(key, if on { "on" } else { "off" });
    signal.set(on);
}

/// The browser's voice. Asked for by name: where there is none, the binding
/// would hand out nothing as if it were one.
fn voice() -> Option<SpeechSynthesis> {
    let voice = Reflect::get(&window(), &"speechSynthesis".into()).ok()?;
    voice.is_object().then(|| voice.unchecked_into())
}

fn hush() {
    if let Some(voice) = voice() {
        voice.cancel();
    }
}

/// Whether somebody pressed anything since the page was opened, as far as the
/// browser tells.
fn was_pressed() -> bool {
    let of = |thing: &JsValue, name: &str| Reflect::get(thing, &name.into()).ok();
    let presses = of(&window().navigator(), "userActivation");
    let presses = presses.filter(JsValue::is_object);
    let pressed = presses.and_then(|presses| of(&presses, "hasBeenActive"));
    pressed.is_some_and(|pressed| pressed.is_truthy())
}

/// Whether there is something that sounds already.
fn is_running() -> bool {
    AUDIO.with_borrow(|audio| {
        let state = audio
            .as_ref()
            .and_then(|audio| Reflect::get(audio, &"state".into()).ok());
        state.and_then(|state| state.as_string()).as_deref() == Some("running")
    })
}

fn with_audio(act: impl FnOnce(&AudioContext) -> Result<(), JsValue>) -> Result<(), JsValue> {
    AUDIO.with_borrow_mut(|audio| {
        if audio.is_none() {
            *audio = Some(AudioContext::new()?);
        }
        audio.as_ref().map_or(Ok(()), act)
    })
}

fn play(tones: &[f32]) -> Result<(), JsValue> {
    with_audio(|audio| {
        let _ = audio.resume()?;
        let mut at = audio.current_time();
        for tone in tones {
            let (oscillator, gain) = (audio.create_oscillator()?, audio.create_gain()?);
            oscillator.set_type(OscillatorType::Square);
            oscillator.frequency().set_value(*tone);
            gain.gain().set_value(LOUDNESS);
            oscillator.connect_with_audio_node(&gain)?;
            gain.connect_with_audio_node(&audio.destination())?;
            oscillator.start_with_when(at)?;
            at += TONE;
            oscillator.stop_with_when(at)?;
        }
        Ok(())
    })
}

/// Calls a function of the browser's that may not be there.
fn call(this: &JsValue, name: &str, with: &JsValue) -> Option<JsValue> {
    let function = Reflect::get(this, &name.into()).ok()?;
    let function: Function = function.dyn_into().ok()?;
    function.call1(this, with).ok()
}

fn buzz(pattern: &[u32]) {
    let pattern: js_sys::Array = pattern.iter().map(|one| JsValue::from(*one)).collect();
    let _ = call(&window().navigator(), "vibrate", &pattern);
}

/// Keeps the screen awake until it is dropped or the page is out of sight.
/// Where the browser can't, the phone sleeps as usual.
#[derive(Default)]
pub struct Awake(RefCell<Option<JsValue>>);

impl Awake {
    /// Asks for it, anew after the page was out of sight.
    pub async fn ask(&self) {
        let Ok(lock) = Reflect::get(&window().navigator(), &"wakeLock".into()) else {
            return;
        };
        if !lock.is_object() {
            return;
        }
        let asked = call(&lock, "request", &"screen".into());
        let Some(promise) = asked.and_then(|asked| asked.dyn_into::<Promise>().ok()) else {
            return;
        };
        // Refused when the battery is low: nothing to be done about it.
        if let Ok(held) = wasm_bindgen_futures::JsFuture::from(promise).await {
            self.0.replace(Some(held));
        }
    }
}

impl Drop for Awake {
    fn drop(&mut self) {
        if let Some(held) = self.0.take() {
            let _ = call(&held, "release", &JsValue::UNDEFINED);
        }
    }
}
