//! Who hears a frame: who sends it, through which gateways it goes, and who reads it in the end.

use wirelore_model::{Database, EcuId, FrameId, NetworkId, Passed, RouteId};

/// The ways of one frame through the vehicle.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Listening {
    /// The network that it is sent on.
    pub network: NetworkId,
    /// Who sends it.
    pub senders: Vec<EcuId>,
    /// What gateways make of it, in the order in which it happens.
    pub hops: Vec<Hop>,
    /// Who reads it, or a frame that one of its values was copied to, and on which network; `None` where the unit is on none of them.
    pub readers: Vec<(EcuId, Option<NetworkId>)>,
}

/// One step through a gateway.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Hop {
    /// The gateway.
    pub gateway: EcuId,
    /// The network it hears the frame on.
    pub from: NetworkId,
    /// The network it sends on.
    pub to: NetworkId,
    /// What arrives.
    pub frame: FrameId,
    /// What leaves: the same frame, or the one that a value of it is copied to.
    pub becomes: FrameId,
    /// The rule by which it happens.
    pub route: RouteId,
}

impl Listening {
    /// Follows a frame.
    ///
    /// ```
    /// use wirelore_survey::Listening;
    /// let text = "
    ///     network drive can
    ///     network body can
    ///     ecu brakes on drive
    ///     ecu hub on drive, body
    ///     ecu cluster on body
    ///     frame speed on drive id 0x10 {
    ///         sent by brakes
    ///         read by cluster
    ///     }
    ///     gateway hub { pass speed from drive to body }";
    /// let database = wirelore_lang::check_text("van.lore", text).database.expect("it is right");
    /// let (speed, _) = database.frame_named("speed").expect("it is there");
    /// let listening = Listening::to(&database, speed);
    /// assert_eq!(listening.hops.len(), 1);
    /// assert_eq!(listening.readers, [(database.ecu_named("cluster").expect("it is there").0, Some(listening.hops[0].to))]);
    /// ```
    #[must_use]
    pub fn to(database: &Database, frame: FrameId) -> Self {
        let network = database.frames[frame.index()].seen_on[0].network;
        let mut listening = Self {
            network,
            senders: database.frames[frame.index()].senders.clone(),
            hops: Vec::new(),
            readers: Vec::new(),
        };
        let mut followed = vec![frame];
        let mut at = 0;
        while let Some(frame) = followed.get(at).copied() {
            listening.pass(database, frame);
            listening.copy(database, frame, &mut followed);
            listening.read(database, frame);
            at += 1;
        }
        listening
    }

    /// The networks it, or a copy of one of its values, is seen on.
    #[must_use]
    pub fn networks(&self) -> Vec<NetworkId> {
        let mut networks = vec![self.network];
        for hop in &self.hops {
            for network in [hop.from, hop.to] {
                if !networks.contains(&network) {
                    networks.push(network);
                }
            }
        }
        networks
    }

    fn pass(&mut self, database: &Database, frame: FrameId) {
        for appearance in &database.frames[frame.index()].seen_on {
            let Some(route) = appearance.via else { continue };
            let rule = &database.routes[route.index()];
            let (from, to) = (rule.from, rule.to);
            self.hops.push(Hop { gateway: rule.gateway, from, to, frame, becomes: frame, route });
        }
    }

    fn copy(&mut self, database: &Database, frame: FrameId, followed: &mut Vec<FrameId>) {
        for (rule, number) in database.routes.iter().zip(0..) {
            let Passed::Signal { from_frame, to_frame, .. } = rule.what else { continue };
            if from_frame == frame {
                let (from, to) = (rule.from, rule.to);
                let route = RouteId(number);
                self.hops.push(Hop { gateway: rule.gateway, from, to, frame, becomes: to_frame, route });
                if !followed.contains(&to_frame) {
                    followed.push(to_frame);
                }
            }
        }
    }

    fn read(&mut self, database: &Database, frame: FrameId) {
        let frame = &database.frames[frame.index()];
        for reader in &frame.readers {
            let on = |network: &NetworkId| {
                database.ecus[reader.index()].on.iter().any(|attachment| attachment.network == *network)
            };
            let network = frame.seen_on.iter().map(|appearance| appearance.network).find(on);
            if !self.readers.contains(&(*reader, network)) {
                self.readers.push((*reader, network));
            }
        }
    }
}
