namespace Heaveline.Drives.Events;

/// <summary>A bump on its way to an event: what stands so far.</summary>
internal sealed class Sighting(Candidate candidate, EventSpeed speed, OnsetTable table)
{
    /// <summary>What stood out.</summary>
    public Candidate Candidate => candidate;

    /// <summary>The speed.</summary>
    public EventSpeed Speed { get; set; } = speed;

    /// <summary>How well each car and shape goes with it.</summary>
    public OnsetTable Table => table;

    /// <summary>First touch and its standard deviation, s.</summary>
    public (double Time, double Spread) Onset { get; set; }

    /// <summary>Length and its standard deviation, m.</summary>
    public (double Value, double Spread) Length { get; set; }

    /// <summary>When the bump's end is under the front axle, and the standard deviation of that, s.</summary>
    public (double Time, double Spread) End { get; set; }

    /// <summary>Its height, m; below 0 for a hollow.</summary>
    public double Height { get; set; }

    /// <summary>When the rear wheels have left it, s.</summary>
    public double Through { get; set; }

    /// <summary>How far the car had come, m; not finite without a speed.</summary>
    public double Distance { get; set; }

    /// <summary>Where the car was at the onset; null where that is not known.</summary>
    public GroundPlace? Place { get; set; }

    /// <summary>Why it does not count; blank where it does.</summary>
    public string Reason { get; set; } = "";

    /// <summary>Whether it would count, had nobody rejected it.</summary>
    public bool WouldCount { get; set; }

    /// <summary>Whether a user rejected it.</summary>
    public bool IsRejected { get; set; }

    /// <summary>Its site's place among the sites.</summary>
    public int Site { get; set; } = -1;

    /// <summary>Reads onset, length and end off the table.</summary>
    /// <param name="car">Log weight of each car.</param>
    /// <param name="shape">Log weight of each shape from other bumps.</param>
    /// <param name="wheelbase">Wheelbase, m.</param>
    public void Read(ReadOnlySpan<double> car, ReadOnlySpan<double> shape, double wheelbase)
    {
        var means = table.Means(car, shape, Speed.Value);
        Onset = (means.Onset, means.OnsetSpread);
        Length = (means.Length, means.LengthSpread);
        End = (means.Through, means.ThroughSpread);
        Height = means.Height;
        Through = End.Time + (wheelbase / Speed.Value);
    }
}
