//! Whether each leaf of a door has a size at all.

use flapwright_model::acceptance::Topic;
use flapwright_model::message::{Mm, Word};
use flapwright_model::part::{Part, Subject};

use super::{BoxContext, Check, Run, finding};
use crate::finding::{Finding, Severity};
use crate::message::LeafHasNoSize;

const NAME: &str = "leaf-has-no-size";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
Width and height of each leaf after reveals, gaps, tweaks and the joint; and whether the stiles and \
rails of a framed leaf leave room for what they hold.

## Why it matters
A reveal larger than the opening, or a joint beside the door, leaves nothing to cut.

## Severity
Stop.

## What can be done
Correct the reveals, the tweaks, the joint or the widths of the frame.",
    severities: &[Severity::Stop],
    settings: &[],
    run: Run::Box(look),
};

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    for panel in &context.report.panels {
        if !matches!(panel.id.part, Part::Leaf { .. }) {
            continue;
        }
        let [width, height] = panel.size;
        let members = panel.infill.as_ref().map_or((0.0, 0.0), |infill| {
            let members = infill.members;
            (
                members.u_start + members.u_end,
                members.v_start + members.v_end,
            )
        });
        for (topic, what, size, taken) in [
            (Topic::Width, Word("width"), width, members.0),
            (Topic::Height, Word("height"), height, members.1),
        ] {
            if size > taken {
                continue;
            }
            let (cut, taken_by_the_frame) = (Mm(size), Mm(taken));
            let message = if taken > 0.0 {
                LeafHasNoSize::FrameTakesAll {
                    what,
                    size: cut,
                    taken_by_the_frame,
                }
            } else {
                LeafHasNoSize::Nothing {
                    what,
                    size: cut,
                    taken_by_the_frame,
                }
            };
            findings.push(
                finding(NAME, Severity::Stop, message, vec![Subject::Part(panel.id)])
                    .about([Topic::Part(panel.id), topic]),
            );
        }
    }
}
