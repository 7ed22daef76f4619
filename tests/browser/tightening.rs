//! Tightening a group of bolts on the screens of a build.

use crate::builds::sprayer;
use crate::page::Page;
use crate::rig::Rig;
use crate::wait::until;

/// What the big button asks for: the bolt and the lap, from 1.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Asked {
    /// The bolt.
    pub bolt: u32,
    /// The lap.
    pub lap: u32,
}

/// The app takes two pulls closer than half a second as one of a shaking hand.
const BETWEEN_PULLS: std::time::Duration = std::time::Duration::from_millis(520);

impl Page {
    /// The demo engine on the bench, at its tightening page.
    pub async fn at_the_groups(rig: &mut Rig) -> Self {
        let page = rig.open().await;
        page.bring_in(&sprayer()).await;
        page.close_the_file().await;
        page.open_the_build().await;
        page.turn_to("Tighten").await;
        page.wait_for_test("new-group").await;
        page
    }

    /// Types into a field with a keyboard.
    pub async fn type_into(&self, field: &str, text: &str) {
        let name = format!("field-{field}");
        self.bring_into_view(&name).await;
        let thing = self.wait_for_test(&name).await;
        thing.send_keys(text).await.unwrap();
        until(&format!("{text:?} in {field}"), async || {
            (self.value_of(field).await == text).then_some(())
        })
        .await;
    }

    /// Presses something wherever it is on the page.
    pub async fn reach(&self, name: &str) {
        until(&format!("data-test {name:?} to be reached"), async || {
            self.by_test(name).await?;
            self.bring_into_view(name).await;
            self.by_test(name).await?.click().await.ok()
        })
        .await;
    }

    /// Presses a bolt on the drawing. Its round is what a finger meets; one
    /// engine's driver can't press a group of a drawing.
    pub async fn tap_bolt(&self, bolt: u32) {
        let name = format!("bolt-{bolt}");
        let script = "return document.querySelector(`[data-test=${arguments[0]}] circle`)";
        until(&format!("{name} to be pressed"), async || {
            self.bring_into_view(&name).await;
            let found = self
                .client
                .execute(script, vec![serde_json::json!(name)])
                .await
                .ok()?;
            self.element(found)?.click().await.ok()
        })
        .await;
    }

    /// Describes a head from its sheet: so many rows of five, in this order, at
    /// these torques; and keeps it.
    pub async fn describe_head(&self, order: &[u32], torques: &[&str]) {
        self.press_test("new-group").await;
        self.type_into("label", "head").await;
        self.reach_pick("kind-plain").await;
        for (at, bolt) in order.iter().enumerate() {
            let name = format!("bolt-{bolt}");
            self.tap_bolt(*bolt).await;
            until(&format!("bolt {bolt} in the order"), async || {
                let said = self.by_test(&name).await?.attr("aria-label").await.ok()??;
                said.contains(&format!("number {} of", at + 1))
                    .then_some(())
            })
            .await;
        }
        for (at, torque) in torques.iter().enumerate() {
            if at > 0 {
                self.put_keypad_away().await;
                self.reach("stage-torque").await;
            }
            self.type_into(&format!("stage-{}", at + 1), torque).await;
        }
        self.put_keypad_away().await;
        self.type_into("lubricant", "engine oil").await;
        self.type_into("under-head", "engine oil").await;
        self.type_into("wrench-low", "20").await;
        self.type_into("wrench-high", "150").await;
        self.put_keypad_away().await;
        self.wait_for_text("The sheet is whole").await;
        self.reach("group-save").await;
        self.wait_for_test("run-begin").await;
    }

    async fn reach_pick(&self, name: &str) {
        self.bring_into_view(name).await;
        self.pick(name).await;
    }

    /// What is asked for now; nothing when nothing is to be pulled.
    pub async fn asked(&self) -> Option<Asked> {
        let tap = self.by_test("run-tap").await?;
        let number = async |name: &str| tap.attr(name).await.ok()??.parse().ok();
        Some(Asked {
            bolt: number("data-bolt").await?,
            lap: number("data-lap").await?,
        })
    }

    /// Makes one pull, and gives what was pulled.
    pub async fn pull(&self) -> Asked {
        let before = until("the button", async || self.asked().await).await;
        tokio::time::sleep(BETWEEN_PULLS).await;
        self.press_test("run-tap").await;
        until("the pull to be taken", async || {
            if self.has_test("run-through").await {
                return Some(());
            }
            (self.asked().await? != before).then_some(())
        })
        .await;
        before
    }

    /// Makes so many pulls, and gives the bolts in the order they came.
    pub async fn pulls(&self, count: usize) -> Vec<u32> {
        let mut bolts = Vec::new();
        for _ in 0..count {
            bolts.push(self.pull().await.bolt);
        }
        bolts
    }

    /// The page is loaded anew in the middle of a run.
    pub async fn interrupt(&self) {
        self.reload().await;
        self.wait_until_it_stands().await;
        self.wait_for_test("run-asking").await;
    }

    /// How bolts look on the map, by number.
    pub async fn looks(&self, look: &str) -> Vec<u32> {
        let script = "return [...document.querySelectorAll('[data-test=bolt-map] [data-look]')]
            .filter((bolt) => bolt.dataset.look === arguments[0])
            .map((bolt) => Number(bolt.dataset.bolt))";
        let found = self.script(script, vec![serde_json::json!(look)]).await;
        serde_json::from_value(found).unwrap()
    }
}
