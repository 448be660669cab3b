using System.Collections.Immutable;
using Heaveline.Quantities;

namespace Heaveline.Drives.Events;

/// <summary>What a user knows of a drive, and what he decided about its bumps.</summary>
public sealed record EventSettings
{
    /// <summary>The wheelbase that is taken where none is given, m: about the middle of today's passenger cars. Common practice, no source.</summary>
    public const double UsualWheelbase = 2.6;

    /// <summary>The wheelbases that anything on wheels has, m. Common practice, no source.</summary>
    public static (double Low, double High) Wheelbases => (0.5, 12.0);

    /// <summary>Wheelbase, m; null: not known.</summary>
    public double? Wheelbase
    {
        get;
        init => field = value is { } given
            ? Checked.Within(given, Wheelbases.Low, Wheelbases.High, "Give the wheelbase with a unit, as 2.70 m.") : null;
    }

    /// <summary>Where the phone lay; null: not known.</summary>
    public PhonePlace? Phone { get; init; }

    /// <summary>The seat that heave is wanted at, by name; null: the floor where the phone lay.</summary>
    public string? Seat { get; init; }

    /// <summary>Where that seat is, behind the front axle, m; null: where the phone lay.</summary>
    public double? SeatBehindFrontAxle { get; init; }

    /// <summary>
    /// Names of sites, each with an instant of one of its bumps, s since the log's start. One name at bumps of several sites makes one site of them;
    /// several names at bumps of one site part it.
    /// </summary>
    public ImmutableArray<(string Site, double At)> Sites { get; init => field = value.IsDefault ? [] : value; } = [];

    /// <summary>Bumps that are not to count, each by an instant within a second of it, s since the log's start.</summary>
    public ImmutableArray<double> Rejected { get; init => field = value.IsDefault ? [] : value; } = [];

    /// <summary>Bumps that were not found: when the front wheels met them, s since the log's start.</summary>
    public ImmutableArray<double> Added { get; init => field = value.IsDefault ? [] : value; } = [];

    /// <summary>Where an instant stands that a file says, as "drive.yaml, line 9", by the instant; empty where none does.</summary>
    public ImmutableDictionary<double, string> Written { get; init => field = value ?? ImmutableDictionary<double, string>.Empty; } =
        ImmutableDictionary<double, string>.Empty;

    /// <summary>Why a wheelbase is none, with its end of a sentence; null where it may be one.</summary>
    /// <param name="wheelbase">m.</param>
    public static string? Refusal(double wheelbase) => wheelbase >= Wheelbases.Low && wheelbase <= Wheelbases.High ? null
        : FormattableString.Invariant($"give {Wheelbases.Low} m to {Wheelbases.High} m.");

    /// <summary>The wheelbase that is reckoned with, m.</summary>
    public double WheelbaseTaken => Wheelbase ?? UsualWheelbase;
}
