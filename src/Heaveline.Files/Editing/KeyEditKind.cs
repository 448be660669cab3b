namespace Heaveline.Files.Editing;

/// <summary>What an edit does.</summary>
public enum KeyEditKind
{
    /// <summary>Writes a value under a key or as an item: replaces one that is there, adds one that is not.</summary>
    Put,

    /// <summary>Adds an item at the end of a list; begins the list when it is not there.</summary>
    Append,

    /// <summary>Takes a key or an item out with everything under it.</summary>
    Remove,
}
