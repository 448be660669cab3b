namespace Heaveline.Studies;

/// <summary>What must stand beside numbers that people act on.</summary>
public static class Cautions
{
    /// <summary>The cautions, one sentence each.</summary>
    public static IReadOnlyList<string> All { get; } =
    [
        "A compressed spring stores enough energy to kill: use the proper compressor and stand clear of its line.",
        "Never work under or beside a vehicle held by a jack alone: set it on stands on level ground with its wheels chocked, so that it can neither "
        + "roll nor fall over.",
        "Changed springs, dampers, bars or ride height change braking, handling, roll and headlamp aim: check them all, "
        + "step by step, off public roads first.",
        "Road law, type approval and insurance differ by place: ask the local authority and a licensed engineer "
        + "before a changed vehicle goes on the road.",
    ];

    /// <summary>One line for the end of a printout.</summary>
    public static string Short { get; } =
        "Computed from what the car file says; it is no proof of safety. Springs store energy; braking, handling and headlamp aim change with them; "
        + "test off public roads; local law and licensed engineers decide.";
}
