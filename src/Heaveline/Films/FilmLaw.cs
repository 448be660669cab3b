namespace Heaveline.Films;

/// <summary>Which terms the dampers of a fitted car have beside one slope for both ways.</summary>
public enum FilmLaw
{
    /// <summary>One slope for both ways, no dry friction.</summary>
    Linear,

    /// <summary>One slope in bump, another in rebound.</summary>
    Split,

    /// <summary>One slope for both ways, and dry friction.</summary>
    Friction,

    /// <summary>Both.</summary>
    Whole,
}
