namespace Heaveline.Web.Pages.Passes;

/// <summary>What pinned trials are called: A, B, C.</summary>
internal static class TrialTrayLetters
{
    /// <summary>The letter of a pin.</summary>
    /// <param name="place">Its place, from 0 on.</param>
    public static char Of(int place) => (char)('A' + place);
}
