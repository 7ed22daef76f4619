//! Moving bolts on the drawing to where they sit: dragged, or picked and pushed
//! by arrows.

use assembly_core::tightening::layout::Layout;
use build_journal::fold::tightening::{PITCH, placed};
use leptos::prelude::*;

use super::Describing;
use crate::build::tighten::drag::drag_map;
use crate::build::tighten::map::{Drawing, Face, nearest};
use crate::build::tighten::typed::numbers;
use crate::kit::piece::{El, Piece, button, el, note, row};

/// Bolts are put down on marks so far apart, in hundredths of the way from one
/// bolt to the next.
const MARK: f64 = 25.0;

/// Moving, while it lasts.
#[derive(Clone, Copy)]
struct Moving {
    describing: Describing,
    picked: RwSignal<usize>,
    said: RwSignal<String>,
    /// Whether the drawing is turned: for as long as bolts are moved.
    turned: bool,
}

/// The button, and what it opens.
pub fn arrange(describing: Describing) -> Piece {
    let on = RwSignal::new(false);
    let open = button("quiet", "", "bolts-move", move || {
        on.update(|on| *on = !*on)
    })
    .live_flag("aria-pressed", move || on.get())
    .live_text(move || {
        if on.get() {
            "Done moving"
        } else {
            "Not as drawn? Move the bolts"
        }
        .to_owned()
    });
    let panel = Piece::when(
        move || on.get(),
        move || {
            Moving {
                describing,
                picked: RwSignal::new(0),
                said: RwSignal::new(String::new()),
                turned: describing
                    .sheet
                    .with_untracked(|sheet| Drawing::of(&sheet.layout).turned),
            }
            .panel()
            .into()
        },
    );
    Piece::all([row([open.into()]).into(), panel])
}

impl Moving {
    fn panel(self) -> El {
        let layout = Memo::new(move |_| self.describing.sheet.with(|sheet| sheet.layout.clone()));
        let drawing = Piece::live(move || {
            let drawing = layout.with(|layout| Drawing::to_move(layout, self.turned));
            let face = move |bolt: usize| self.face(bolt);
            let drop = {
                let drawing = drawing.clone();
                move |bolt, way| self.by(bolt, drawing.on_the_layout(way))
            };
            drag_map(&drawing, face, move |bolt| self.picked.set(bolt), drop).into()
        });
        let arrow = |sign: &str, word: &str, test: &str, way: (f64, f64)| {
            button("quiet arrow", sign, test, move || self.push(way))
                .attr("aria-label", &format!("move it {word}"))
                .into()
        };
        let side = MARK / f64::from(PITCH);
        let arrows = row([
            arrow("←", "left", "move-left", (-side, 0.0)),
            arrow("↑", "up", "move-up", (0.0, -side)),
            arrow("↓", "down", "move-down", (0.0, side)),
            arrow("→", "right", "move-right", (side, 0.0)),
        ])
        .class("row arrows");
        let back = button(
            "quiet",
            "Put all back in rows",
            "bolts-in-rows",
            move || {
                self.describing.typing.places.set(String::new());
                self.said.set(String::new());
            },
        );
        el("div")
            .class("card")
            .test("bolts-moving")
            .with(note(
                "hint",
                "Drag each bolt to where it sits. Or tap one, then push it with the arrows. The numbers stay.",
            ))
            .with(drawing)
            .with(note("", "").test("bolt-picked").live_text(move || {
                format!("Bolt {} is picked.", self.picked.get() + 1)
            }))
            .with(arrows)
            .with(
                note("wrong", "")
                    .attr("role", "status")
                    .test("move-said")
                    .live_text(move || self.said.get()),
            )
            .with(row([back.into()]))
    }

    fn face(self, bolt: usize) -> Face {
        let is_picked = self.picked.get() == bolt;
        let (look, said) = if is_picked {
            ("picked", "picked, to be moved")
        } else {
            ("open", "not picked")
        };
        Face {
            look,
            words: (bolt + 1).to_string(),
            said: said.to_owned(),
        }
    }

    /// Pushes the picked bolt by a step as it is seen on the screen.
    fn push(self, (right, down): (f64, f64)) {
        let way = if self.turned {
            (down, -right)
        } else {
            (right, down)
        };
        self.by(self.picked.get_untracked(), way);
    }

    /// Moves a bolt, unless another is there.
    fn by(self, bolt: usize, way: (f64, f64)) {
        self.picked.set(bolt);
        let layout = self
            .describing
            .sheet
            .with_untracked(|sheet| sheet.layout.clone());
        let places = moved(&layout, bolt, way);
        match placed(&places) {
            Ok(_) => {
                self.said.set(String::new());
                self.describing
                    .typing
                    .places
                    .set(numbers(places.as_flattened()));
            }
            Err(why) => self.said.set(format!("It stays where it was. {why}")),
        }
    }
}

/// The places of all bolts, in hundredths, after one of them moved: put down on
/// the nearest mark.
fn moved(layout: &Layout, bolt: usize, (right, down): (f64, f64)) -> Vec<[i32; 2]> {
    // Bolts of a circle may be drawn nearer than one unit.
    let scale = f64::from(PITCH) / nearest(layout).min(1.0);
    // Within what a drawing may be, which is far within the numbers of places.
    let whole = |one: f64| one.round() as i32;
    let on_mark = |one: f64| whole((one / MARK).round() * MARK);
    let places = layout.places().iter().enumerate().map(|(at, (x, y))| {
        if at == bolt {
            [on_mark((x + right) * scale), on_mark((y + down) * scale)]
        } else {
            [whole(x * scale), whole(y * scale)]
        }
    });
    places.collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_bolt_moves_to_the_nearest_mark_and_the_others_stay() {
        let rows = Layout::rows(&[3, 2]);
        let places = moved(&rows, 4, (0.3, 0.1));
        assert_eq!(places, [[0, 0], [100, 0], [200, 0], [50, 100], [175, 100]]);
        assert_eq!(placed(&places).unwrap().places()[4], (1.75, 1.0));
        // Bolts of a narrow circle are as far apart as those of a row.
        let circle = moved(&Layout::circle(12), 0, (0.0, 0.0));
        assert!(placed(&circle).is_ok(), "{circle:?}");
        // On top of another it does not go.
        assert!(placed(&moved(&rows, 0, (0.9, 0.0))).is_err());
    }
}
