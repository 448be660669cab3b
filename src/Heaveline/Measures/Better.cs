namespace Heaveline.Measures;

/// <summary>Which way a number is better.</summary>
public enum Better
{
    /// <summary>Neither: it says what is.</summary>
    Neither,

    /// <summary>Less is better.</summary>
    Less,

    /// <summary>More is better.</summary>
    More,
}
