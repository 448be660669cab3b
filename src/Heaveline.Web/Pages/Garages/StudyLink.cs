using Heaveline.Studies;
using Heaveline.Web.Serving;

namespace Heaveline.Web.Pages.Garages;

/// <summary>Where a study of the garage is answered: the page of the choice, with all that its file says in the address.</summary>
internal static class StudyLink
{
    /// <summary>Under which key the study's file goes along in the address.</summary>
    public const string Key = "study";

    /// <summary>The address; null where the study is refused.</summary>
    /// <param name="name">The study's name in the garage.</param>
    /// <param name="garage">The garage.</param>
    public static string? Of(string name, GarageView garage) => ((IFinder)garage).Study(name).Value is { } sheet
        ? "choose" + PageAddress.Query(sheet.Lines.Select(line => (line.Choice, (string?)line.Words)).Append((Key, name)))
        : null;
}
