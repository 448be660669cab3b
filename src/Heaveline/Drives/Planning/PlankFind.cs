using Heaveline.Passes;

namespace Heaveline.Drives.Planning;

/// <summary>A row of planks that was found for a goal, with what the nonlinear passes say of it.</summary>
public sealed record PlankFind
{
    /// <summary>What it is to excite.</summary>
    public required PlankGoal Goal { get; init; }

    /// <summary>The planks.</summary>
    public required PlankLayout Layout { get; init; }

    /// <summary>The speed to drive, m/s.</summary>
    public required double Speed { get; init; }

    /// <summary>
    /// Share of the body's energy of motion in the first second after the rear wheels have left that lies in the wanted motion (–), of the linear
    /// car by its closed form.
    /// </summary>
    public required double LinearShare { get; init; }

    /// <summary>The same by the nonlinear pass.</summary>
    public required double Share { get; init; }

    /// <summary>The least of three passes: at the speed, 5 % slower and 5 % faster.</summary>
    public required double LeastShare { get; init; }

    /// <summary>The share from the front wheels' first contact to the end of that second (–): while the wheels still push.</summary>
    public required double WholeShare { get; init; }

    /// <summary>Speed of the end that moves farther in that motion, root mean square of the first second, m/s.</summary>
    public required double Motion { get; init; }

    /// <summary>Least load of any tyre in the three passes over what it bears at rest (–).</summary>
    public required double LeastLoad { get; init; }

    /// <summary>Least distance of any wheel from a stop in the three passes, m.</summary>
    public required double TravelLeft { get; init; }

    /// <summary>The nonlinear pass at the speed.</summary>
    public required Pass Pass { get; init; }
}
