namespace Heaveline.Reports;

/// <summary>What a report can hold besides its cautions, its sources and how to make it again, which it always has.</summary>
public enum PartKind
{
    /// <summary>In half a page: what is the matter, why, what another car does to it, what that costs, how sure it is.</summary>
    Finding,

    /// <summary>Each car at every load state: side view, numbers, doubts.</summary>
    Car,

    /// <summary>Modes of each car under the load.</summary>
    Modes,

    /// <summary>Each car's pass over the road: figure, story, measures.</summary>
    Pass,

    /// <summary>All cars over the road side by side, at the speed and over speeds; from two cars on.</summary>
    Compare,

    /// <summary>All cars on a random road of a class, over speeds.</summary>
    Ride,

    /// <summary>A rule of the trade as a map over speed, for the first car.</summary>
    Rule,

    /// <summary>Why the first car pitches: ranked causes.</summary>
    Why,

    /// <summary>What would make the first car pitch less over the road: each cure with its price and its chance.</summary>
    Cure,

    /// <summary>What to buy, by a study: the shortlist with its prices, the shopping list, what it asks for when it is fitted.</summary>
    Choose,

    /// <summary>How sure the first car's numbers are.</summary>
    Doubt,

    /// <summary>What the change from the first car to each other costs; alone, where the car stands.</summary>
    Cost,

    /// <summary>Each drive: what its log is good for, its bumps, the floor's vibration, the car as driven.</summary>
    Drive,

    /// <summary>Whether a change worked, by the drive before it and the drive after it.</summary>
    Prove,

    /// <summary>What films from the roadside tell: the car in them, before and after a change, or the cars of one bump in order.</summary>
    Film,
}
