namespace Heaveline.Roads;

/// <summary>Which wheel tracks an obstacle lies in; the other one is flat.</summary>
public enum Tracks
{
    /// <summary>Both, alike.</summary>
    Both,

    /// <summary>The left one only.</summary>
    Left,

    /// <summary>The right one only.</summary>
    Right,
}
