namespace Heaveline.Drives.Comparison;

/// <summary>By what two drives' sites are taken for the same bump.</summary>
public enum SiteBasis
{
    /// <summary>The user gave both one name.</summary>
    Name,

    /// <summary>They lie on one place, driven in one direction.</summary>
    Position,

    /// <summary>They come in the same order and look alike.</summary>
    Order,
}
