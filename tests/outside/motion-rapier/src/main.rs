//! Lets doors of the four opening kinds fall in an independent physics engine and compares: poses
//! at the same input angle within 0.2 mm, time and speed of the fall within 1 %, and poses better
//! with a shorter step.
//!
//! The engine knows bodies and joints only: leaves are free bodies, arms are bodies of 10 g
//! (the motion crate's arms have no mass), all hinges are revolute joints.
//!
//! Run with `cargo run --release --manifest-path tests/outside/motion-rapier/Cargo.toml`.

use std::process::ExitCode;

use flapwright_model::card::Card;
use flapwright_model::linkage::Bodies;
use flapwright_model::space::SectionPoint;
use flapwright_motion::closed::ClosedDoor;
use flapwright_motion::drive::Drive;
use flapwright_motion::dynamics::{Ending, release};
use flapwright_motion::gravity::{GRAVITY, Level, Weights};
use flapwright_motion::motion::{Motion, motion};
use flapwright_motion::statics::{Grip, Setup};
use rapier2d_f64::prelude::{
    BroadPhaseBvh, CCDSolver, ColliderSet, ImpulseJointSet, IntegrationParameters, IslandManager,
    MassProperties, MultibodyJointSet, NarrowPhase, PhysicsPipeline, Pose, RevoluteJointBuilder,
    RigidBodyBuilder, RigidBodyHandle, RigidBodySet, SoftBodySet, Vector,
};

#[path = "../../../../crates/motion/tests/checks/common.rs"]
#[allow(dead_code)]
mod common;

use common::{every_kind, plates};

/// kg.
const ARM_MASS: f64 = 0.01;
/// Where the fall begins.
const START: f64 = 0.6;
/// kg, each leaf.
const LEAF_MASS: f64 = 5.0;

struct World {
    bodies: RigidBodySet,
    joints: ImpulseJointSet,
    ground: RigidBodyHandle,
}

/// Metres.
fn metres(place: SectionPoint) -> Vector {
    Vector::new(place.x / 1000.0, place.y / 1000.0)
}

impl World {
    fn new() -> Self {
        let mut bodies = RigidBodySet::new();
        let ground = bodies.insert(RigidBodyBuilder::fixed());
        Self {
            bodies,
            joints: ImpulseJointSet::new(),
            ground,
        }
    }

    fn body(
        &mut self,
        centre: SectionPoint,
        angle: f64,
        mass: f64,
        inertia: f64,
    ) -> RigidBodyHandle {
        let properties = MassProperties::new(Vector::ZERO, mass, inertia);
        let body = RigidBodyBuilder::dynamic()
            .pose(Pose::new(metres(centre), angle))
            .additional_mass_properties(properties)
            .can_sleep(false);
        self.bodies.insert(body)
    }

    /// A hinge at a place of the section between two bodies as they are now.
    fn hinge(&mut self, one: RigidBodyHandle, two: RigidBodyHandle, at: SectionPoint) {
        let at = metres(at);
        let local =
            |body: RigidBodyHandle| self.bodies[body].position().inverse_transform_point(at);
        let joint = RevoluteJointBuilder::new()
            .local_anchor1(local(one))
            .local_anchor2(local(two));
        self.joints.insert(one, two, joint, true);
    }

    fn arm(
        &mut self,
        (from, to): (SectionPoint, SectionPoint),
        carrier: RigidBodyHandle,
    ) -> RigidBodyHandle {
        let length = (to - from).length() / 1000.0;
        let inertia = ARM_MASS * length * length / 12.0;
        let arm = self.body(from.lerp(to, 0.5), 0.0, ARM_MASS, inertia);
        self.hinge(self.ground, arm, from);
        self.hinge(arm, carrier, to);
        arm
    }
}

struct Fall {
    time: f64,
    speed: f64,
    /// Largest distance of a leaf's middle from where the motion crate has it, mm.
    off: f64,
}

/// The fall in the engine with a step of `dt` seconds.
fn simulate(card: &Card, door: &ClosedDoor, motion: &Motion, dt: f64) -> Fall {
    let mut world = World::new();
    let pose = motion.pose(START);
    let middles: Vec<SectionPoint> = door
        .leaves
        .iter()
        .map(|leaf| {
            SectionPoint::new(
                (leaf.back_o + leaf.front_o) / 2.0,
                (leaf.top + leaf.bottom) / 2.0,
            )
        })
        .collect();
    let leaves: Vec<RigidBodyHandle> = (door.leaves.iter().zip(&middles).zip(&pose.leaves))
        .map(|((leaf, middle), (_, pose))| {
            let height = (leaf.top - leaf.bottom) / 1000.0;
            let inertia = LEAF_MASS * height * height / 12.0;
            world.body(pose.apply(*middle), pose.angle, LEAF_MASS, inertia)
        })
        .collect();
    let carrier = *leaves.last().expect("a leaf");
    let arms: Vec<_> = pose
        .arms
        .iter()
        .map(|arm| world.arm(*arm, carrier))
        .collect();
    if let Bodies::FixedAxis { .. } | Bodies::Folding { .. } = &card.linkage.bodies {
        world.hinge(world.ground, leaves[0], motion.axis());
    }
    if let (Bodies::Folding { joint_behind, .. }, Some(joint_y)) =
        (&card.linkage.bodies, door.joint_y)
    {
        let joint = SectionPoint::new(door.leaves[0].back_o - joint_behind, joint_y);
        world.hinge(leaves[0], leaves[1], pose.leaves[0].1.apply(joint));
    }
    let turns_with_leaf = !matches!(
        card.linkage.bodies,
        Bodies::Parallel { .. } | Bodies::TwoArms { .. }
    );
    // An arm's body starts at angle 0 where the input is at its start.
    let (measured, offset) = if turns_with_leaf {
        (leaves[0], 0.0)
    } else {
        (arms[0], pose.input)
    };

    let mut parameters = IntegrationParameters {
        num_solver_iterations: 24,
        ..Default::default()
    };
    parameters.dt = dt;
    let mut pipeline = PhysicsPipeline::new();
    let (mut islands, mut broad, mut narrow) = (
        IslandManager::new(),
        BroadPhaseBvh::new(),
        NarrowPhase::new(),
    );
    let (mut colliders, mut multibody) = (ColliderSet::new(), MultibodyJointSet::new());
    let (mut soft, mut ccd) = (SoftBodySet::new(), CCDSolver::new());
    let (mut time, mut input, mut off) = (0.0, pose.input, 0.0_f64);
    loop {
        pipeline.step(
            Vector::new(0.0, -GRAVITY),
            &parameters,
            &mut islands,
            &mut broad,
            &mut narrow,
            &mut world.bodies,
            &mut colliders,
            &mut world.joints,
            &mut multibody,
            &mut soft,
            &mut ccd,
            &(),
            &(),
        );
        let next = world.bodies[measured].rotation().angle() + offset;
        if next <= 0.0 {
            let share = input / (input - next);
            return Fall {
                time: time + dt * share,
                speed: (next - input) / dt,
                off,
            };
        }
        (time, input) = (time + dt, next);
        assert!(time < 10.0, "the door does not fall shut");
        let expected = motion.pose(input / motion.end_angle());
        for ((leaf, middle), (_, pose)) in leaves.iter().zip(&middles).zip(&expected.leaves) {
            let at = world.bodies[*leaf].translation() - metres(pose.apply(*middle));
            off = off.max(at.length() * 1000.0);
        }
    }
}

fn main() -> ExitCode {
    let mut failed = false;
    for (name, card, door) in every_kind() {
        if matches!(card.linkage.bodies, Bodies::PoseTable { .. }) {
            continue;
        }
        let motion = motion(&card, "A", &door).expect("a motion");
        let mass = plates(&door, LEAF_MASS);
        let weights = Weights::of(&door, &mass);
        let grip = Grip::of(&door);
        let setup = Setup {
            motion: &motion,
            weights: &weights,
            drive: &Drive::NOTHING,
            grip,
        };
        let ours = release(&setup, Level::Likely, START, 0.0);
        assert_eq!(ours.ending, Ending::Closes);
        let last = ours.last().expect("a path");
        let errors = |dt: f64| {
            let fall = simulate(&card, &door, &motion, dt);
            let time = (fall.time / last.time - 1.0).abs();
            let speed = (fall.speed / last.input_speed - 1.0).abs();
            println!(
                "{name:14} step {dt:.5} s: {:.4} mm, time {:.4} s ({:.2} %), speed {:.4} /s ({:.2} %)",
                fall.off,
                fall.time,
                time * 100.0,
                fall.speed,
                speed * 100.0
            );
            (fall.off, time, speed)
        };
        let (coarse, fine) = (errors(1.0 / 250.0), errors(1.0 / 4000.0));
        failed |= fine.0 > 0.2 || fine.1 > 0.01 || fine.2 > 0.01 || fine.0 > coarse.0;
    }
    if failed {
        ExitCode::FAILURE
    } else {
        ExitCode::SUCCESS
    }
}
