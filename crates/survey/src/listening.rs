//! Who hears a frame or a signal: who sends it, through which gateways it goes, and who reads it in the end.

use wirelore_model::{Database, EcuId, FrameId, NetworkId, Passed, RouteId, SignalId};

/// What is listened to.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Topic {
    /// The frame.
    pub frame: FrameId,
    /// The signals of it, of one name mostly, which several pages may have; none: the whole frame.
    pub signals: Vec<SignalId>,
}

impl From<FrameId> for Topic {
    fn from(frame: FrameId) -> Self {
        Self { frame, signals: Vec::new() }
    }
}

impl Topic {
    /// Whether a signal of its frame belongs to it.
    fn has(&self, signal: SignalId) -> bool {
        self.signals.is_empty() || self.signals.contains(&signal)
    }
}

/// The ways of one frame, or of signals in it, through the vehicle.
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
    /// Follows a frame or signals: a frame with everything that is copied out of it, signals with their own copies only.
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
    pub fn to(database: &Database, topic: impl Into<Topic>) -> Self {
        let topic = topic.into();
        let frame = &database.frames[topic.frame.index()];
        let mut listening = Self {
            network: frame.seen_on[0].network,
            senders: frame.senders.clone(),
            hops: Vec::new(),
            readers: Vec::new(),
        };
        let mut followed = vec![topic];
        let mut at = 0;
        while let Some(topic) = followed.get(at).cloned() {
            listening.pass(database, topic.frame);
            listening.copy(database, &topic, &mut followed);
            listening.read(database, topic.frame);
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
            self.add(Hop { gateway: rule.gateway, from, to, frame, becomes: frame, route });
        }
    }

    fn copy(&mut self, database: &Database, topic: &Topic, followed: &mut Vec<Topic>) {
        for (rule, number) in database.routes.iter().zip(0..) {
            let Passed::Signal { from_frame, from_signal, to_frame, to_signal } = rule.what else { continue };
            if from_frame != topic.frame || !topic.has(from_signal) {
                continue;
            }
            let (from, to) = (rule.from, rule.to);
            let route = RouteId(number);
            self.add(Hop { gateway: rule.gateway, from, to, frame: from_frame, becomes: to_frame, route });
            if !followed.iter().any(|other| other.frame == to_frame && other.has(to_signal)) {
                followed.push(Topic { frame: to_frame, signals: vec![to_signal] });
            }
        }
    }

    /// Adds a step; two signals may come into a frame that is passed on, and it is passed on once.
    fn add(&mut self, hop: Hop) {
        if !self.hops.contains(&hop) {
            self.hops.push(hop);
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

#[cfg(test)]
mod tests {
    use super::*;

    const TWO_STEPS: &str = "
        network drive can
        network body can
        network far can
        ecu brakes on drive
        ecu hub on drive, body
        ecu second on body, far
        ecu cluster on body
        ecu lamp on far
        frame brake_state on drive id 0x10 {
            sent by brakes
            signal speed in byte 0
            signal pedal in bit 1.0 flag
        }
        frame dash on body id 0x20 {
            read by cluster
            signal speed in byte 0
            signal light in bit 1.0 flag
        }
        frame rear on far id 0x30 {
            read by lamp
            signal light in bit 0.0 flag
        }
        gateway hub {
            copy brake_state.speed from drive to dash.speed on body
            copy brake_state.pedal from drive to dash.light on body
        }
        gateway second { copy dash.light from body to rear.light on far }";

    /// The speed ends at the cluster; the pedal goes on to the lamp, and the whole frame goes both ways.
    #[test]
    fn a_signal_goes_where_its_copies_go() {
        let database = wirelore_lang::check_text("van.lore", TWO_STEPS).database.expect("it is right");
        let (frame, described) = database.frame_named("brake_state").expect("it is there");
        let readers = |topic: Topic| {
            let readers = Listening::to(&database, topic).readers.into_iter();
            readers.map(|(ecu, _)| database.ecus[ecu.index()].label.name.as_str()).collect::<Vec<_>>()
        };
        let of = |name| Topic { frame, signals: described.signals_named(name).map(|(id, _)| id).collect() };
        assert_eq!(readers(of("speed")), ["cluster"]);
        assert_eq!(readers(of("pedal")), ["cluster", "lamp"]);
        assert_eq!(readers(frame.into()), ["cluster", "lamp"]);
        assert_eq!(Listening::to(&database, of("speed")).hops.len(), 1);
    }
}
