//! The words of an order: who does it, what came in, what to leave alone.

use std::rc::Rc;

use build_journal::fact::WorkOrdered;
use build_journal::{Body, WorkId};
use leptos::prelude::*;

use crate::build::Opened;
use crate::device::chance;
use crate::device::drafts::Draft;
use crate::kit::piece::{El, button, el, row};
use crate::kit::words::{too_long, word_field};

const AT_MOST: usize = 300;

/// The fields, in order: name on the page, label, hint.
const FIELDS: [(&str, &str, &str); 6] = [
    (
        "what",
        "What is to be done",
        "With the finish, when there is one.",
    ),
    ("shop", "Who does it", ""),
    (
        "brought",
        "What came in, and what it is measured to",
        "Pistons, rings, shells, plate, the bolts that will be used.",
    ),
    ("leave", "What has to be left alone", ""),
    (
        "conditions",
        "The numbers hold with",
        "Caps torqued, plate and gasket on, at 68 °F (20 °C).",
    ),
    ("price", "Price agreed on", ""),
];

/// Words of an order that are being written.
pub struct OrderForm {
    opened: Opened,
    was: Option<WorkOrdered>,
    drafts: [Draft; 6],
    tried: RwSignal<bool>,
    done: Box<dyn Fn()>,
}

impl OrderForm {
    /// The form of an order, or of a new one; `done` is told when it is
    /// written down or given up.
    #[must_use]
    pub fn new(opened: Opened, was: Option<&WorkOrdered>, done: impl Fn() + 'static) -> Self {
        let name = was.map_or_else(|| "new".to_owned(), |was| was.work.to_string());
        let start = |field: &str| -> String {
            let Some(was) = was else {
                return String::new();
            };
            let text = match field {
                "what" => Some(&was.what),
                "shop" => was.shop.as_ref(),
                "brought" => was.brought.as_ref(),
                "leave" => was.leave_alone.as_ref(),
                "conditions" => was.conditions.as_ref(),
                _ => was.price.as_ref(),
            };
            text.cloned().unwrap_or_default()
        };
        let drafts = FIELDS.map(|(field, ..)| {
            let name = opened.draft(&format!("work/{name}/{field}"));
            Draft::or(name, &start(field))
        });
        Self {
            opened,
            was: was.cloned(),
            drafts,
            tried: RwSignal::new(false),
            done: Box::new(done),
        }
    }

    fn clear(&self) {
        for draft in self.drafts {
            draft.clear();
        }
        self.tried.set(false);
    }

    fn write(&self) {
        self.tried.set(true);
        let texts = self.drafts.map(|draft| draft.now().trim().to_owned());
        if texts.iter().any(|text| too_long(text, AT_MOST).is_some()) {
            return;
        }
        let [what, shop, brought, leave_alone, conditions, price] = texts;
        if what.is_empty() {
            return;
        }
        let some = |text: String| Some(text).filter(|text| !text.is_empty());
        let ordered = WorkOrdered {
            work: (self.was.as_ref())
                .map_or_else(|| WorkId::from_random(chance::bits()), |was| was.work),
            what,
            step: self.was.as_ref().and_then(|was| was.step.clone()),
            shop: some(shop),
            brought: some(brought),
            leave_alone: some(leave_alone),
            conditions: some(conditions),
            price: some(price),
        };
        if self.opened.write_down(Body::WorkOrdered(ordered)).is_some() {
            self.clear();
            (self.done)();
        }
    }
}

/// The fields of an order.
#[must_use]
pub fn order_form(form: OrderForm) -> El {
    // New work and an order that is changed may be open at once.
    let prefix = if form.was.is_some() {
        "work"
    } else {
        "new-work"
    };
    let (tried, what) = (form.tried, form.drafts.first().copied());
    let fields = FIELDS
        .iter()
        .zip(form.drafts)
        .map(|((field, label, hint), draft)| {
            let is_what = *field == "what";
            let wrong = move || {
                let empty = what.is_some_and(|what| what.get().trim().is_empty());
                (is_what && tried.get() && empty).then(|| "Say what is to be done.".to_owned())
            };
            word_field(
                &format!("{prefix}-{field}"),
                label,
                hint,
                draft,
                AT_MOST,
                wrong,
            )
            .into()
        });
    let fields = el("div").class("fields").all(fields);
    let form = Rc::new(form);
    let give_up = form.was.is_some().then(|| {
        let form = Rc::clone(&form);
        button("quiet", "Leave it", "work-unchanged", move || {
            form.clear();
            (form.done)();
        })
    });
    let word = if form.was.is_some() {
        "Write it down"
    } else {
        "Put it on the order"
    };
    let write = button("", word, &format!("{prefix}-write"), move || form.write());
    el("div")
        .class("inset")
        .with(fields)
        .with(row([write.into(), give_up.into()]))
}
