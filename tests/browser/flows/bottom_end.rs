//! A whole bottom end by the thumb alone, with the page lost now and then.

use crate::page::Page;
use crate::rig::Rig;
use crate::wait::until;

/// Where the page is lost: a plain generator of numbers (Lehmer's, with the
/// multiplier of MINSTD: Park and Miller 1988, from memory), the same each time.
struct Draw(u64);

impl Draw {
    fn next(&mut self, below: u64) -> usize {
        self.0 = self.0 * 48_271 % 0x7fff_ffff;
        usize::try_from(self.0 % below).unwrap()
    }
}

/// One round: the measure, the tool it is read with, its first reading whole,
/// and the last digits of those after it, in turn.
struct Round {
    measure: &'static str,
    tool: &'static str,
    whole: &'static str,
    short: &'static [&'static str],
}

const ROUNDS: [Round; 7] = [
    Round {
        measure: "main-journal-diameter",
        tool: "outside-micrometer-proved",
        whole: "2.4483",
        short: &["82", "84", "81", "85"],
    },
    Round {
        measure: "main-bearing-bore",
        tool: "bore-gauge-tenths",
        whole: "2.4503",
        short: &["04", "06", "05", "08"],
    },
    Round {
        measure: "rod-journal-diameter",
        tool: "outside-micrometer-proved",
        whole: "2.0986",
        short: &["85", "87", "84", "83"],
    },
    Round {
        measure: "rod-bearing-bore",
        tool: "bore-gauge-tenths",
        whole: "2.1012",
        short: &["14", "13", "15", "10"],
    },
    Round {
        measure: "bore",
        tool: "bore-gauge-tenths",
        whole: "4.0312",
        short: &["10", "08", "06", "09", "14"],
    },
    Round {
        measure: "piston-diameter",
        tool: "outside-micrometer-proved",
        whole: "4.0273",
        short: &["74", "72", "75"],
    },
    Round {
        measure: "ring-end-gap",
        tool: "feeler-blades",
        whole: "16",
        short: &["17", "18", "16"],
    },
];

impl Page {
    /// Taps a number and Next, and waits until it is kept. How many taps it was.
    async fn tap_reading(&self, text: &str) -> usize {
        self.enter("reading", text).await;
        let before = self.acknowledged().await;
        self.press_test("keypad-next").await;
        self.wait_until_acknowledged(before + 1).await;
        text.len() + 1
    }

    /// A vee eight, described on the form.
    async fn describe_vee_eight(&self) {
        self.go_to("#/new").await;
        let name = self.wait_for_test("field-name").await;
        name.send_keys("market-hall eight").await.unwrap();
        self.pick("layout-vee").await;
        self.enter("cylinders", "8").await;
        self.enter("mains", "5").await;
        self.put_keypad_away().await;
        self.bring_into_view("describe-save").await;
        self.press_test("describe-save").await;
        self.wait_for_test("next-step").await;
    }

    /// The build of the address.
    async fn build_in_hand(&self) -> String {
        let address = self.client.current_url().await.unwrap();
        let hash = address.fragment().unwrap_or_default().to_owned();
        let id = hash.split('/').nth(2);
        id.unwrap_or_else(|| panic!("no build at {address}"))
            .to_owned()
    }

    /// Answers what a first reading asks before it: which tool, and what a gauge
    /// was set on.
    async fn take_for(&self, round: &Round) {
        let kind = format!("list-{}-{}", round.measure, round.tool);
        until("the field of the reading", async || {
            if self.has_test("field-reading").await {
                return Some(());
            }
            if self.has_test("zeroed").await {
                self.set_the_gauge().await;
            } else if self.has_test(&kind).await {
                self.press_pick(&kind).await;
            }
            None
        })
        .await;
    }

    async fn readings_kept(&self) -> usize {
        let kept = self.kept().await;
        let all = kept.vault.iter();
        all.filter(|(_, text)| text.contains("\"kind\":\"reading\""))
            .count()
    }
}

each_engine!(a_vee_eight_is_entered_by_thumb_with_the_page_lost_and_loses_nothing);
async fn a_vee_eight_is_entered_by_thumb_with_the_page_lost_and_loses_nothing(rig: &mut Rig) {
    let page = rig.open().await;
    page.describe_vee_eight().await;
    let build = page.build_in_hand().await;
    let mut draw = Draw(20_261_125);
    let mut read = 0;
    for round in &ROUNDS {
        page.go_to(&format!("#/build/{build}/measure/{}/1", round.measure))
            .await;
        page.wait_for_test("entry").await;
        page.take_for(round).await;
        let (mut taps, mut at) = (0, 0);
        let lost_at = 1 + draw.next(7);
        while !page.has_test("all-measured").await {
            if at == lost_at {
                // What was typed and not kept is there again, too.
                page.enter("reading", &round.short[0][..1]).await;
                page.reload().await;
                page.wait_for_test("field-reading").await;
                assert_eq!(page.value_of("reading").await, round.short[0][..1]);
                page.touch("reading").await;
                page.press_key("take back").await;
                taps += 1;
            }
            let short = round.short.iter().cycle().nth(at);
            let text = match at {
                0 => round.whole,
                _ => short.unwrap(),
            };
            taps += page.tap_reading(text).await;
            at += 1;
        }
        assert!(at > lost_at, "{}: {at} readings", round.measure);
        read += at;
        let average = taps as f64 / at as f64;
        println!("{}: {average:.2} taps a reading", round.measure);
        assert!(average <= 6.0, "{}: {average}", round.measure);
        assert_eq!(page.readings_kept().await, read, "{}", round.measure);
    }
    page.reload().await;
    page.wait_until_it_stands().await;
    assert_eq!(page.readings_kept().await, read);
    assert!(!page.has_test("asked").await);
    page.assert_no_trouble().await;
}
