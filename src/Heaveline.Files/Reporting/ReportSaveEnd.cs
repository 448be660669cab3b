namespace Heaveline.Files.Reporting;

/// <summary>What came of saving a report.</summary>
public enum ReportSaveEnd
{
    /// <summary>It is in the folder now.</summary>
    Saved,

    /// <summary>A file of that name and with the same bytes was there already.</summary>
    SameThere,

    /// <summary>A file of that name with other bytes is there, and was left alone.</summary>
    OtherThere,
}
