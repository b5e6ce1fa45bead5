//! Work that a water supply asks for: what can be done to which part.

/// One kind of work.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Task {
    /// Roof looked over: branches, droppings, flashings.
    Roof,
    /// Gutter cleaned.
    Gutter,
    /// Leaf screen of a feed cleaned.
    Screen,
    /// First-flush diverter emptied and rinsed, its ball or float checked.
    Diverter,
    /// Slow-release hole of a diverter cleared.
    Hole,
    /// Mesh at a tank's inlet and overflow checked for holes and mosquitoes.
    InletMesh,
    /// Tank looked into from outside: animals, larvae, cracks.
    TankLook,
    /// Sludge taken out.
    Desludging,
    /// Lid and lock checked.
    Lid,
    /// Anchors and straps checked.
    Anchors,
    /// Strainer of a pump cleaned.
    PumpStrainer,
    /// Sediment or carbon cartridge changed.
    Cartridge,
    /// Ceramic candle scrubbed.
    Ceramic,
    /// Ultraviolet lamp changed.
    Lamp,
    /// Sleeve of the lamp wiped.
    Sleeve,
    /// Water tested.
    WaterTest,
    /// Something else, which the note names.
    Other,
    /// Joints, valves and taps of a tank's store looked over for drips.
    Joints,
    /// Tank disinfected: when its water calls for it, not every so often.
    Disinfection,
}

impl Task {
    /// All kinds, in the way of the water.
    pub const ALL: [Task; 19] = [
        Task::Roof,
        Task::Gutter,
        Task::Screen,
        Task::Diverter,
        Task::Hole,
        Task::InletMesh,
        Task::TankLook,
        Task::Desludging,
        Task::Disinfection,
        Task::Lid,
        Task::Anchors,
        Task::Joints,
        Task::PumpStrainer,
        Task::Cartridge,
        Task::Ceramic,
        Task::Lamp,
        Task::Sleeve,
        Task::WaterTest,
        Task::Other,
    ];
}
