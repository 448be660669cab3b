using Heaveline.Quantities;

namespace Heaveline.Films;

/// <summary>What was written down about a film: which car, where, the marks, the wheelbase that is its ruler.</summary>
public sealed record FilmSheet
{
    /// <summary>What the film is called.</summary>
    public required string Name { get; init => field = Checked.NotBlank(value, "Give the film a name."); }

    /// <summary>Where it was taken; blank where nothing is said.</summary>
    public string Place { get; init => field = value ?? ""; } = "";

    /// <summary>Which car is seen; the film's name where nothing is said.</summary>
    public string Seen { get => field ?? Name; init; }

    /// <summary>The film itself, relative to the sheet; null: the track alone is kept.</summary>
    public string? Video { get; init; }

    /// <summary>The kept track, relative to the sheet; null: beside it under its name with the ending .csv.</summary>
    public string? Track { get; init; }

    /// <summary>Distance between the axles.</summary>
    public required Amount<Length> Wheelbase { get; init; }

    /// <summary>Speed of the pass, where it is known.</summary>
    public Amount<Velocity>? Speed { get; init; }

    /// <summary>How many times slower the film is played than it was taken, where it is known.</summary>
    public double? Slowness { get; init; }

    /// <summary>Share of the sprung mass on the front axle, where it is known.</summary>
    public Amount<Plain>? FrontShare { get; init; }

    /// <summary>What was marked; null: nothing yet, so only a kept track can be read.</summary>
    public FilmMarks? Marks { get; init; }

    /// <summary>What is known of the pass besides its film.</summary>
    public FilmGiven Given => new()
    {
        Wheelbase = Wheelbase,
        Speed = Speed,
        Slowness = Slowness,
        FrontShare = FrontShare,
        MarkDoubt = Marks?.Doubt ?? 2.0,
    };
}
