namespace Heaveline.Recording;

/// <summary>Where each number that is given to a record from outside stands among them.</summary>
internal static class LiveGiven
{
    /// <summary>The step, s.</summary>
    public const int Step = 0;

    /// <summary>Travel of the four wheels at trim, forces, loads, two flows.</summary>
    public const int Trim = 1;

    /// <summary>Numbers of a trim.</summary>
    public const int TrimCount = 14;

    /// <summary>A position in search of the trim: nine numbers.</summary>
    public const int Position = Trim + TrimCount;

    /// <summary>Speed, m/s.</summary>
    public const int Speed = Position + Models.TrimBalance.Unknowns;

    /// <summary>Time of the first sample, s.</summary>
    public const int Start = Speed + 1;

    /// <summary>Number of the last sample, counted from the first.</summary>
    public const int Last = Start + 1;

    /// <summary>
    /// Of two questions to curves that are answered side by side: where the stretch of each begins, where it ends, in samples from the first.
    /// </summary>
    public const int Stretch = Last + 1;

    /// <summary>The first of the car's own numbers.</summary>
    public const int Car = Stretch + 4;
}
