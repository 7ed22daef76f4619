//! What is written down of a part: its name, size, number, price and lot.

use build_journal::fact::PartListed;
use build_journal::fold::ListedPart;
use build_journal::{Body, PartId};
use leptos::prelude::*;

use crate::build::Opened;
use crate::device::chance;
use crate::device::drafts::Draft;
use crate::kit::piece::{El, button, el, row};
use crate::kit::words::{too_long, word_field};

const AT_MOST: usize = 120;

/// A part that is being written down.
pub struct PartForm {
    opened: Opened,
    was: Option<PartListed>,
    drafts: [Draft; 6],
    tried: RwSignal<bool>,
    done: Box<dyn Fn()>,
}

/// The fields, in order: name on the page, label, hint.
const FIELDS: [(&str, &str, &str); 6] = [
    ("name", "What it is", ""),
    (
        "size",
        "Size",
        "Standard, or the oversize or undersize on the box.",
    ),
    ("quantity", "How many", ""),
    ("supplier", "From whom", ""),
    ("price", "Price, for all of them", ""),
    (
        "lot",
        "Lot or box number",
        "Two boxes of one size may differ: a new lot is measured anew.",
    ),
];

impl PartForm {
    /// The form of a part on the list, or of a new one; `done` is told when it
    /// is written down or given up.
    #[must_use]
    pub fn new(opened: Opened, part: Option<&ListedPart>, done: impl Fn() + 'static) -> Self {
        let was = part.map(|part| part.listed.clone());
        let name = was
            .as_ref()
            .map_or_else(|| "new".to_owned(), |was| was.part.to_string());
        let start = |field: &str| -> String {
            let Some(was) = &was else {
                return String::new();
            };
            let text = match field {
                "name" => Some(&was.name),
                "size" => was.size.as_ref(),
                "quantity" => was.quantity.as_ref(),
                "supplier" => was.supplier.as_ref(),
                "price" => was.price.as_ref(),
                _ => was.lot.as_ref(),
            };
            text.cloned().unwrap_or_default()
        };
        let drafts = FIELDS.map(|(field, ..)| {
            let name = opened.draft(&format!("part/{name}/{field}"));
            Draft::or(name, &start(field))
        });
        Self {
            opened,
            was,
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
        let [name, size, quantity, supplier, price, lot] = texts;
        if name.is_empty() {
            return;
        }
        let some = |text: String| Some(text).filter(|text| !text.is_empty());
        let listed = PartListed {
            part: (self.was.as_ref())
                .map_or_else(|| PartId::from_random(chance::bits()), |was| was.part),
            name,
            supply: self.was.as_ref().and_then(|was| was.supply.clone()),
            place: self.was.as_ref().and_then(|was| was.place.clone()),
            size: some(size),
            quantity: some(quantity),
            supplier: some(supplier),
            price: some(price),
            lot: some(lot),
        };
        if self.opened.write_down(Body::PartListed(listed)).is_some() {
            self.clear();
            (self.done)();
        }
    }
}

/// The fields of a part.
#[must_use]
pub fn part_form(form: PartForm) -> El {
    // A part of one's own and one that is changed may be open at once.
    let prefix = if form.was.is_some() {
        "part"
    } else {
        "new-part"
    };
    let (tried, name) = (form.tried, form.drafts.first().copied());
    let fields = FIELDS
        .iter()
        .zip(form.drafts)
        .map(|((field, label, hint), draft)| {
            let wrong = {
                let is_name = *field == "name";
                move || {
                    let empty = name.is_some_and(|name| name.get().trim().is_empty());
                    (is_name && tried.get() && empty).then(|| "Say what it is.".to_owned())
                }
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
    let fields = el("div").class("pair").all(fields);
    let form = std::rc::Rc::new(form);
    let give_up = form.was.is_some().then(|| {
        let form = std::rc::Rc::clone(&form);
        button("quiet", "Leave it", "part-unchanged", move || {
            form.clear();
            (form.done)();
        })
    });
    let word = if form.was.is_some() {
        "Write it down"
    } else {
        "Put it on the list"
    };
    let write = button("", word, &format!("{prefix}-write"), move || form.write());
    el("div")
        .class("inset")
        .with(fields)
        .with(row([write.into(), give_up.into()]))
}
