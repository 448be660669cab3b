using Heaveline.Studies;

namespace Heaveline.Reports;

/// <summary>Which parts a report is to hold, from their words.</summary>
internal static class ReportParts
{
    /// <summary>The parts in order, each once; what is wrong with the words is objected to.</summary>
    /// <param name="reader">What was given.</param>
    /// <param name="several">Whether the report is of several cars.</param>
    /// <param name="drives">Of how many drives it is.</param>
    /// <param name="study">Whether it has a study of what to buy.</param>
    /// <param name="films">Whether it has films.</param>
    public static IReadOnlyList<PartKind> Of(AskedReader reader, bool several, int drives, bool study, bool films)
    {
        var words = reader.Text(ReportStudy.Parts) ?? ReportPartChoice.Usual(several, drives, study, films);
        var kinds = ReportPartChoice.Kinds(words, several, drives, study, films);
        var unknown = ReportPartChoice.IsAll(words) ? []
            : ReportPartChoice.Split(words).Where(word => ReportPartChoice.Named(word) is null).ToArray();
        foreach (var word in unknown)
        {
            reader.Object(ReportStudy.Parts.Name, $"'{word}' is no part; there are {string.Join(", ", ReportStudy.PartWords)}; or all.");
        }

        if (kinds.Contains(PartKind.Choose) && !study)
        {
            reader.Object(ReportStudy.Parts.Name, "The part choose needs a study of what to buy.");
        }
        else if (study && !kinds.Contains(PartKind.Choose) && unknown.Length == 0)
        {
            reader.Object(ReportStudy.Study.Name, "study: no part is of it; choose the part choose too, or leave it out.");
        }

        if (kinds.Contains(PartKind.Film) && !films)
        {
            reader.Object(ReportStudy.Parts.Name, "The part film needs a film.");
        }
        else if (films && !kinds.Contains(PartKind.Film) && unknown.Length == 0)
        {
            reader.Object(ReportStudy.Films.Name, "film: no part is of it; choose the part film too, or leave it out.");
        }

        if (kinds.Contains(PartKind.Compare) && !several)
        {
            reader.Object(ReportStudy.Parts.Name, "The part compare needs two cars or variants.");
        }
        else if (kinds.Count == 0 && unknown.Length == 0)
        {
            reader.Object(ReportStudy.Parts.Name, $"The list of parts is empty; choose among {string.Join(", ", ReportStudy.PartWords)}.");
        }

        return kinds;
    }
}
