//! After an interruption: where did it stand? Never a guess; what is not known
//! leads to what is done about it.

use assembly_core::fastener::stages::Stage;
use assembly_core::tightening::interrupted::{Advice, Known, Paint, Remedy};
use build_journal::fact::{Body, BoltPulled, BoltsRenewed, Knew, RunMark, RunMarked};
use build_journal::fold::tightening::Run;
use leptos::prelude::*;

use super::begin::place_of;
use super::give_up;
use super::map::{Drawing, Face, press_map};
use super::run::Running;
use super::words;
use crate::kit::piece::{El, Piece, button, el, note, p};

/// What was answered so far.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Answered {
    Nothing,
    Knew(Known),
    Paint(Known, Paint),
    GivingUp,
}

/// A question with its big buttons.
fn panel(test: &str, heading: &str) -> El {
    el("div")
        .class("run-panel")
        .test(test)
        .with(el("h1").text(heading))
}

fn answer(words: &str, test: &str, act: impl FnMut() + 'static) -> Piece {
    button("answer", words, test, act).into()
}

/// The screen.
pub fn asking(running: Running) -> Piece {
    let answered = RwSignal::new(Answered::Nothing);
    Piece::live(move || {
        let answered_now = answered.get();
        let Some(run) = running.now() else {
            return Piece::none();
        };
        untrack(|| match answered_now {
            Answered::Nothing => where_did_it_stand(running, &run, answered),
            Answered::Knew(known) if paint_matters(&run, known) => paint(known, answered),
            Answered::Knew(known) => remedy(running, &run, known, Paint::Missing, answered),
            Answered::Paint(known, paint) => remedy(running, &run, known, paint, answered),
            Answered::GivingUp => giving_up(running, &run, answered),
        })
    })
}

fn where_did_it_stand(running: Running, run: &Run, answered: RwSignal<Answered>) -> Piece {
    let two = run.two_hands.then(|| {
        note(
            "notice notice-caution",
            "A pull came from another screen meanwhile: two were at this group.",
        )
        .test("two-hands")
    });
    let last = run.standing.last().map(|(bolt, _)| bolt + 1);
    let next = run.next();
    let ticked = last.map_or_else(
        || "No pull of this lap is ticked.".to_owned(),
        |last| format!("Bolt {last} was ticked last."),
    );
    let sure = match (last, next) {
        (Some(last), Some(next)) => format!(
            "I am sure: bolt {last} is pulled, bolt {} is not",
            next.bolt + 1
        ),
        (None, Some(next)) => format!("I am sure: bolt {} is not pulled yet", next.bolt + 1),
        (_, None) => "I am sure: all are pulled".to_owned(),
    };
    let as_well = next.map(|next| {
        let bolt = next.bolt + 1;
        answer(
            &format!("I am sure: bolt {bolt} is pulled as well"),
            "ask-as-well",
            move || {
                pulled(running, next.bolt, next.lap);
                confirm(running);
            },
        )
    });
    let not_last = last.map(|last| {
        answer(
            &format!("I am sure: bolt {last} is not pulled"),
            "ask-not-last",
            move || {
                running.mark(running.plain(RunMark::TakenBack));
                confirm(running);
            },
        )
    });
    panel("run-asking", "Where did it stand?")
        .with(two)
        .with(
            p(&format!(
                "The book has {}. {ticked}",
                words::where_it_is(run)
            ))
            .test("ask-book"),
        )
        .all([
            answer(&sure, "ask-sure", move || confirm(running)),
            as_well.into(),
            not_last.into(),
            answer("I know the lap, not the bolt", "ask-lap", move || {
                answered.set(Answered::Knew(Known::Lap))
            }),
            answer("I don't know", "ask-nothing", move || {
                answered.set(Answered::Knew(Known::Nothing))
            }),
            // Not one of the answers, and never pressed for one.
            button("quiet", "Give this run up", "ask-give-up", move || {
                answered.set(Answered::GivingUp);
            })
            .into(),
        ])
        .with(note(
            "hint",
            "Nobody can tell by pulling again: a click only says that it is not loose.",
        ))
        .into()
}

fn giving_up(running: Running, run: &Run, answered: RwSignal<Answered>) -> Piece {
    let done = run.clone();
    panel("giving-up", "Give this run up?")
        .with(give_up::said(run))
        .all([
            answer("Back", "ask-back", move || answered.set(Answered::Nothing)),
            answer("Give it up", "give-up-sure", move || {
                if give_up::give_up(running.context, &done) {
                    crate::route::go(&running.group_page());
                }
            }),
        ])
        .into()
}

fn confirm(running: Running) {
    running.mark(RunMarked {
        knew: Some(Knew::Bolt),
        ..running.plain(RunMark::Confirmed)
    });
}

fn pulled(running: Running, bolt: usize, lap: usize) {
    let from_one = |number: usize| u32::try_from(number + 1).unwrap_or(u32::MAX);
    let _ = running
        .context
        .opened
        .write_down(Body::BoltPulled(BoltPulled {
            run: running.fact,
            bolt: from_one(bolt),
            lap: from_one(lap),
            sitting: running.sitting,
        }));
}

/// Whether paint marks would change what is done. One mark tells of one angle;
/// with more of them and no lap known it does not tell which.
fn paint_matters(run: &Run, known: Known) -> bool {
    let angles = run
        .plan
        .stages()
        .iter()
        .filter(|stage| matches!(stage, Stage::Angle(_)));
    let tells = known == Known::Lap || angles.count() == 1;
    tells && run.advice(known, Paint::OnEveryBolt).remedy == Remedy::PaintDecides
}

fn paint(known: Known, answered: RwSignal<Answered>) -> Piece {
    let say = move |paint| move || answered.set(Answered::Paint(known, paint));
    panel("ask-paint", "Is there a paint mark on every bolt?")
        .with(p("A mark on each head and on the casting from before the angle, so that one sees whether it has turned."))
        .all([
            answer("Yes, on every bolt", "ask-paint-yes", say(Paint::OnEveryBolt)),
            answer("No, or not on all", "ask-paint-no", say(Paint::Missing)),
            answer("Back", "ask-back", move || answered.set(Answered::Nothing)),
        ])
        .into()
}

fn remedy(
    running: Running,
    run: &Run,
    known: Known,
    paint: Paint,
    answered: RwSignal<Answered>,
) -> Piece {
    let advice = run.advice(known, paint);
    let knew = Some(if known == Known::Lap {
        Knew::Lap
    } else {
        Knew::Nothing
    });
    let screen = panel("run-remedy", "What to do")
        .with(p(advice.remedy.sentence()).class("remedy").test("remedy"))
        .with(gasket(advice));
    let back = answer("Back", "ask-back", move || answered.set(Answered::Nothing));
    let backed_off = move || {
        running.mark(RunMarked {
            knew,
            ..running.plain(RunMark::BackedOff)
        });
    };
    let restart = move || {
        let lap = running.now().and_then(|run| run.standing.lap_on());
        running.mark(RunMarked {
            knew,
            lap: lap.and_then(|lap| u32::try_from(lap + 1).ok()),
            ..running.plain(RunMark::LapRestarted)
        });
    };
    let off = || {
        answer(
            "They are all backed off: begin again",
            "remedy-backed-off",
            backed_off,
        )
    };
    let choices = match advice.remedy {
        Remedy::GoOn => vec![answer("Go on", "remedy-go-on", move || confirm(running))],
        Remedy::RestartLap => vec![answer("Begin this lap again", "remedy-restart", restart)],
        Remedy::BackOffAndBegin | Remedy::BackOffToSnug => vec![off()],
        Remedy::BackOffOrRelap if is_final(run) => vec![
            off(),
            answer(
                "Go over all once more at the final torque",
                "remedy-relap",
                restart,
            ),
        ],
        Remedy::BackOffOrRelap => vec![off()],
        Remedy::NewBolts => vec![answer(
            "New bolts are in: begin again",
            "remedy-new-bolts",
            move || {
                let renewed = BoltsRenewed {
                    group: running.spot.own,
                    place: place_of(running.spot.at),
                    bolts: Vec::new(),
                    lot: None,
                };
                if running
                    .context
                    .opened
                    .write_down(Body::BoltsRenewed(renewed))
                    .is_some()
                {
                    backed_off();
                }
            },
        )],
        Remedy::PaintDecides => vec![by_eye(running, run, "Tap each bolt whose mark has turned")],
        Remedy::MeasureStretch => {
            vec![by_eye(running, run, "Tap each bolt whose stretch is there")]
        }
    };
    screen.all(choices).with(back).into()
}

fn gasket(advice: Advice) -> Option<El> {
    advice.new_gasket.then(|| {
        note(
            "notice notice-caution",
            "A gasket that was clamped and comes free again has to be a new one.",
        )
        .test("new-gasket")
    })
}

/// Whether the lap that is on is the last: only then is going over all once
/// more a whole tightening.
fn is_final(run: &Run) -> bool {
    run.standing
        .lap_on()
        .is_some_and(|lap| lap + 1 == run.laps())
}

/// Bolt by bolt: what the paint or the length says is what counts in this lap.
fn by_eye(running: Running, run: &Run, words: &str) -> Piece {
    let picked = RwSignal::new(vec![false; run.bolts()]);
    let face = move |bolt: usize| {
        let on = picked.with(|picked| picked.get(bolt) == Some(&true));
        let (look, said) = if on {
            ("done", "done")
        } else {
            ("open", "not done")
        };
        Face {
            look,
            words: (bolt + 1).to_string(),
            said: said.to_owned(),
        }
    };
    let act = move |bolt: usize| {
        picked.update(|picked| {
            if let Some(one) = picked.get_mut(bolt) {
                *one = !*one;
            }
        });
    };
    let take = move || {
        let Some(run) = running.now() else { return };
        let Some(lap) = run.standing.lap_on() else {
            return;
        };
        running.mark(RunMarked {
            knew: Some(Knew::Lap),
            lap: u32::try_from(lap + 1).ok(),
            ..running.plain(RunMark::LapRestarted)
        });
        let picked = picked.get_untracked();
        for bolt in run.plan.pattern().order() {
            if picked.get(*bolt) == Some(&true) {
                pulled(running, *bolt, lap);
            }
        }
    };
    let drawing = Drawing::of(&run.sheet.layout);
    Piece::all([
        p(words).into(),
        press_map(&drawing, face, act).into(),
        answer("So it is: go on with the others", "remedy-by-eye", take),
    ])
}
