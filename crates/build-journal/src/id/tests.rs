//! The order of ids holds whatever the wall clock does.

use proptest::prelude::*;

use super::*;

#[test]
fn an_id_carries_clock_and_counter_and_comes_back_from_its_text() {
    let mut stamper = Stamper::new();
    let id = stamper.stamp(1_753_000_000_123, u64::MAX);
    assert_eq!(id.milliseconds(), 1_753_000_000_123);
    assert_eq!(id.count(), 0);
    assert_eq!(FactId::parse(&id.to_string()), Ok(id));
    let next = stamper.stamp(1_753_000_000_123, 0);
    assert_eq!((next.milliseconds(), next.count()), (id.milliseconds(), 1));
    assert!(next > id && next.to_string() > id.to_string());
}

// The value of RFC 9562, appendix A.6: 2022-02-22T19:22:22Z.
#[test]
fn the_worked_value_of_the_standard_is_read() {
    let id = FactId::parse("017F22E2-79B0-7CC3-98C4-DC0C0C07398F").unwrap();
    assert_eq!(id.milliseconds(), 1_645_557_742_000);
    assert_eq!(id.count(), 0xCC3);
    assert_eq!(id.to_string(), "017f22e2-79b0-7cc3-98c4-dc0c0c07398f");
}

#[test]
fn what_is_no_id_of_a_fact_is_said() {
    assert!(matches!(
        FactId::parse("abc"),
        Err(NotAFactId::NotAnId { .. })
    ));
    let other = FactId::parse("8a6e0804-2bd0-4672-b79d-d97027f9071a").unwrap_err();
    assert!(other.to_string().contains("version 7"));
    assert!(FactId::parse("017f22e279b07cc398c4dc0c0c07398f").is_err());
    let long = BuildId::parse(&"x".repeat(10_000)).unwrap_err();
    assert!(long.to_string().len() < 200);
}

#[test]
fn a_full_counter_borrows_the_next_millisecond() {
    let mut stamper = Stamper::new();
    let mut last = stamper.stamp(5_000, 9);
    for _ in 0..10_000 {
        let next = stamper.stamp(5_000, 0);
        assert!(next > last);
        last = next;
    }
    assert_eq!(last.milliseconds(), 5_002);
    // Once the wall clock has overtaken it, the clock tells wall time again.
    assert_eq!(stamper.stamp(6_000, 0).milliseconds(), 6_000);
}

#[test]
fn a_forged_id_at_the_end_of_time_does_not_stop_the_clock() {
    let mut stamper = Stamper::new();
    stamper.observe(FactId::parse("ffffffff-ffff-7fff-bfff-ffffffffffff").unwrap());
    let mut last = stamper.stamp(1_000, 0);
    for _ in 0..10_000 {
        let next = stamper.stamp(u64::MAX, 0);
        assert!(next > last);
        last = next;
    }
}

#[derive(Clone, Debug)]
enum Event {
    Stamp { wall: u64, random: u64 },
    Observe { wall: u64, count: u16 },
}

fn event() -> impl Strategy<Value = Event> {
    // Few milliseconds, so that ids meet.
    let wall = prop_oneof![0_u64..4, any::<u64>()];
    prop_oneof![
        (wall.clone(), any::<u64>()).prop_map(|(wall, random)| Event::Stamp { wall, random }),
        (0_u64..4, prop_oneof![Just(4095), 0_u16..4096])
            .prop_map(|(wall, count)| Event::Observe { wall, count }),
    ]
}

proptest! {
    #[test]
    fn every_id_is_later_than_all_seen_before(events in prop::collection::vec(event(), 1..60)) {
        let mut stamper = Stamper::new();
        let mut seen = Vec::new();
        for event in events {
            match event {
                Event::Stamp { wall, random } => {
                    let id = stamper.stamp(wall, random);
                    prop_assert!(seen.iter().all(|earlier| *earlier < id));
                    prop_assert_eq!(FactId::parse(&id.to_string()), Ok(id));
                    seen.push(id);
                }
                Event::Observe { wall, count } => {
                    let mut other = Stamper::new();
                    let mut id = other.stamp(wall, 0);
                    for _ in 0..count {
                        id = other.stamp(wall, 0);
                    }
                    stamper.observe(id);
                    seen.push(id);
                }
            }
        }
    }
}
