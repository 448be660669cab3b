using Heaveline.Files.Garages;
using Heaveline.Finding;
using Heaveline.Measures;
using Heaveline.Web.Serving;

namespace Heaveline.Cli.Commands;

/// <summary>The pages' search by numbers, by the index that the command find keeps.</summary>
internal sealed class GarageNumbers : IGarageNumbers
{
    /// <inheritdoc/>
    public NumbersFound? Find(Garage garage, string typed, CancellationToken cancellation = default)
    {
        var (query, problem) = FindWords.Read(typed);
        var words = string.Join(' ', query.Words);
        if (problem.Length > 0)
        {
            return new(words, new Dictionary<string, string>(), problem, "");
        }

        if (query.Bounds.Count == 0)
        {
            return null;
        }

        // The page looks for the words itself, in what it shows.
        var found = GarageFinder.Of(garage, query with { Words = [] }, cancellation: cancellation);
        Measure[] asked = [.. query.Bounds.Select(bound => bound.Measure).Distinct()];
        return new(words, found.Files.ToDictionary(file => file.Name, file => Said(file, asked), StringComparer.Ordinal), "", found.Remark);
    }

    private static string Said(FoundFile file, Measure[] asked) => string.Join("; ", asked.Select(measure =>
    {
        var numbers = file.Numbers.Where(number => number.Key == measure.Key).Select(number => FoundWords.Of(file, measure, number));
        return $"{measure.Name}: {string.Join(", ", numbers)}";
    }));
}
