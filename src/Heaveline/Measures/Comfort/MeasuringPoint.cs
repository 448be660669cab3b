namespace Heaveline.Measures.Comfort;

/// <summary>Where a seated person is touched, ISO 2631-1 clause 5.</summary>
public enum MeasuringPoint
{
    /// <summary>Between the seat surface and the person.</summary>
    Seat,

    /// <summary>Between the backrest and the person.</summary>
    Backrest,

    /// <summary>Under the feet.</summary>
    Feet,
}
