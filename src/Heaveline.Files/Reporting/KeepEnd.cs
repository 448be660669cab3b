namespace Heaveline.Files.Reporting;

/// <summary>What came of keeping a report.</summary>
public enum KeepEnd
{
    /// <summary>It is in the folder now.</summary>
    Kept,

    /// <summary>A file of that name and with the same bytes was there already.</summary>
    SameThere,

    /// <summary>A file of that name with other bytes is there, and was left alone.</summary>
    OtherThere,
}
