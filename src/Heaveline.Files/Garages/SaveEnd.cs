namespace Heaveline.Files.Garages;

/// <summary>How a save ended.</summary>
public enum SaveEnd
{
    /// <summary>The text is on the disk under its name.</summary>
    Saved,

    /// <summary>The file holds this very text already; nothing was written.</summary>
    Unchanged,

    /// <summary>
    /// The file is no longer the one that was read: it was changed, taken away or, for a new one, made by somebody else. It was not touched.
    /// </summary>
    Conflict,

    /// <summary>The name is not taken.</summary>
    NameRefused,

    /// <summary>The text is no car, variant or road, or it is too long.</summary>
    TextRefused,

    /// <summary>Another program held the garage's lock for longer than one waits.</summary>
    Busy,

    /// <summary>The disk did not take it: full, not writable, gone. The file is as it was.</summary>
    NotWritten,
}
