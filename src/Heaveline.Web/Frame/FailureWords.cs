using Microsoft.JSInterop;

namespace Heaveline.Web.Frame;

/// <summary>What a page says of a failure that it did not see coming.</summary>
internal static class FailureWords
{
    /// <summary>Its first line: what a browser's script threw brings where it stood along, which is for the log and not for a reader.</summary>
    /// <param name="failure">The failure.</param>
    public static string Of(Exception failure)
    {
        ArgumentNullException.ThrowIfNull(failure);
        var first = failure.Message.Split('\n', 2)[0].Trim();
        return failure is JSException ? $"The page's script ended: {first.TrimEnd('.')}. Load the page anew; your files are as they were." : first;
    }
}
