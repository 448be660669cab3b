namespace Heaveline.Web.Pages.Reports;

/// <summary>More reports are asked for than wait their turn.</summary>
public sealed class TooManyReportsException() : Exception("Too many reports wait to be made already. Try again when one of them is done.");
