//! How a tool is held to what it measures, drawn: one picture for each task a
//! tool can do, whatever the part is called.

use assembly_core::tool::Task;

use crate::kit::piece::{El, Piece, drawn, el};

/// A stroke of the part, a stroke of the tool, or the way it is moved.
enum Stroke {
    Part(&'static str),
    Tool(&'static str),
    Move(&'static str),
}
use Stroke::{Move, Part, Tool};

/// The picture of a task: what it shows in words, and its strokes.
fn drawing(task: Task) -> Option<(&'static str, &'static [Stroke])> {
    let drawing: (&'static str, &'static [Stroke]) = match task {
        Task::OutsideSize => (
            "A micrometer square across the part, rocked until it is at its widest.",
            &[
                Part("M58 40a30 30 0 1 0 60 0a30 30 0 1 0 -60 0"),
                Tool("M58 40H50V66Q50 76 60 76H116Q126 76 126 66V40H118M126 40H164"),
                Tool("M140 34v12M150 34v12"),
                Move("M72 12q16 -10 32 0M100 6l5 6 -8 2"),
            ],
        ),
        Task::InsideSize => (
            "The gauge in the bore, rocked until its needle turns back: that is the size.",
            &[
                Part("M30 8v66h26v-66zM120 8v66h26v-66z"),
                Tool("M56 58H120M88 58V14"),
                Tool("M78 6a10 10 0 1 0 20 0a10 10 0 1 0 -20 0"),
                Move("M66 26q22 -12 44 0M106 20l5 7 -8 1"),
            ],
        ),
        Task::Depth => (
            "The foot flat on the face, the rod down to the bottom of the step.",
            &[
                Part("M10 34h46v38h64v-38h46v42h-156z"),
                Tool("M34 28h108v6h-108zM88 4v68"),
                Move("M104 44v22M98 60l6 7 6 -7"),
            ],
        ),
        Task::Gap => (
            "The blade goes in flat and drags lightly; the next size must not go in.",
            &[
                Part("M10 12h90v24h-90zM10 44h90v24h-90z"),
                Tool("M30 40H160"),
                Move("M120 28h28M142 22l7 6 -7 6"),
            ],
        ),
        Task::Movement => (
            "The indicator stands fast, its tip square to the part, a turn wound up.",
            &[
                Part("M10 46h70v24h-70z"),
                Tool("M80 58H112M112 58a17 17 0 1 0 34 0a17 17 0 1 0 -34 0M129 58l8 -8"),
                Tool("M129 41V10M104 10h50"),
                Move("M20 34h40M26 28l-7 6 7 6M54 28l7 6 -7 6"),
            ],
        ),
        Task::Flatness => (
            "The straightedge on its edge, light behind it; the blade finds the gap.",
            &[
                Part("M10 50q78 10 156 0v22h-156z"),
                Tool("M10 50V34H166V50"),
                Move("M88 66V56M82 60l6 -6 6 6"),
            ],
        ),
        Task::RunningClearance => (
            "A piece of strip along the shaft, the cap torqued, nothing turned; the width is read.",
            &[
                Part("M20 60h136v14h-136zM20 22h136v14h-136z"),
                Tool("M50 48h76"),
                Move("M88 2v14M82 10l6 7 6 -7"),
            ],
        ),
        Task::SqueezedGap => (
            "Soft clay where the two meet, oiled; put together once, then cut and measured.",
            &[
                Part("M20 8h136v20h-136zM20 56h136v18h-136z"),
                Tool("M60 56q28 -40 56 0z"),
                Move("M140 32v16M134 42l6 7 6 -7"),
            ],
        ),
        Task::Stretch => (
            "The gauge on both ends of the bolt, in the same dimples each time.",
            &[
                Part("M30 30h20v-8h12v44h-12v-8h-20zM62 36h70v16h-70z"),
                Tool("M30 44H18V8H158V44H132"),
                Move("M142 62h22M158 56l7 6 -7 6"),
            ],
        ),
        Task::CrankAngle | Task::TurnAngle => (
            "The wheel on the shaft, the pointer close to it and looked at straight.",
            &[
                Part("M48 40a32 32 0 1 0 64 0a32 32 0 1 0 -64 0"),
                Tool("M80 40a4 4 0 1 0 8 0a4 4 0 1 0 -8 0M80 8v8M112 40h-8M48 40h8M80 72v-8"),
                Tool("M160 10L108 24"),
                Move("M120 60q-6 14 -22 18M102 70l-6 8 9 2"),
            ],
        ),
        Task::Volume => (
            "The plate greased down, the chamber level, filled from the burette; read at the bottom of the curve.",
            &[
                Part("M20 50h136v-6h-136zM40 50q48 40 96 0"),
                Tool("M80 4v30l6 8 6 -8v-30M80 18h12"),
                Move("M112 8v22M106 24l6 7 6 -7"),
            ],
        ),
        Task::SpringForce => (
            "The spring square in the tester, pressed to its height, and read there.",
            &[
                Part("M64 70q24 -8 48 0q-24 -8 -48 -12q24 -8 48 0q-24 -8 -48 -12q24 -8 48 0"),
                Tool("M50 32h76M50 74h76M88 32V14"),
                Move("M88 2v10M140 36v28M134 58l6 7 6 -7"),
            ],
        ),
        Task::Torque => (
            "Pull at the middle of the grip, square to the handle, slow and steady to the end.",
            &[
                Part("M20 40l10 -17h20l10 17 -10 17h-20z"),
                Tool("M40 40H150M126 32h30v16h-30z"),
                Move("M140 74V56M134 62l6 -7 6 7"),
            ],
        ),
        Task::Pressure => (
            "The gauge screwed into the gallery, with nothing leaking, read with hot oil.",
            &[
                Part("M10 60h156v14h-156z"),
                Tool("M88 60V48M66 26a22 22 0 1 0 44 0a22 22 0 1 0 -44 0M88 26l12 -10"),
            ],
        ),
        Task::Temperature => (
            "The probe lies on the metal until its number stands still.",
            &[
                Part("M10 50h156v22h-156z"),
                Tool("M60 50l60 -40 8 10 -62 30z"),
            ],
        ),
        _ => return None,
    };
    Some(drawing)
}

/// The picture for a task, with what it shows in words below it.
#[must_use]
pub fn holding(task: Task) -> Option<El> {
    let (words, strokes) = drawing(task)?;
    let strokes = strokes.iter().map(|stroke| {
        let (class, d) = match stroke {
            Part(d) => ("spot-part", d),
            Tool(d) => ("holding-tool", d),
            Move(d) => ("holding-move", d),
        };
        drawn("path").class(class).attr("d", d).into()
    });
    let drawing = drawn("svg")
        .class("holding-picture")
        .attr("viewBox", "0 0 176 80")
        .attr("aria-hidden", "true")
        .all(strokes.collect::<Vec<Piece>>());
    Some(
        el("figure")
            .class("holding")
            .test("holding")
            .with(drawing)
            .with(el("figcaption").text(words)),
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use build_plan::MEASURES;

    #[test]
    fn every_measure_that_is_read_has_a_picture_of_its_tool() {
        for measure in MEASURES {
            for task in measure.tasks() {
                assert!(drawing(*task).is_some(), "{} by {task:?}", measure.id);
            }
        }
    }
}
