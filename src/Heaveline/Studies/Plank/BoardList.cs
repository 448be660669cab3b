using System.Collections.Immutable;
using Heaveline.Drives.Planning;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>Boards as people write them: "22 x 195 mm, 45 x 145 x 4200 mm", thickness, width and perhaps the length that is sold.</summary>
internal static class BoardList
{
    private const string Example = "22 x 195 mm, 45 x 145 x 4200 mm";
    private static readonly char[] Times = ['x', '×', '*'];

    /// <summary>The boards; empty where words were objected to.</summary>
    /// <param name="reader">Gathers what is wrong.</param>
    /// <param name="choice">The choice.</param>
    /// <param name="words">The words.</param>
    public static ImmutableArray<BoardSize> Read(AskedReader reader, Choice choice, string words)
    {
        var boards = ImmutableArray.CreateBuilder<BoardSize>();
        foreach (var one in words.Split(',', StringSplitOptions.TrimEntries))
        {
            var end = one.LastIndexOfAny([.. "0123456789"]) + 1;
            var (numbers, unit) = (one[..end].Split(Times, StringSplitOptions.TrimEntries), one[end..].Trim());
            if (numbers.Length is not (2 or 3))
            {
                reader.Object(
                    choice.Name, $"'{one}' is no board: give thickness and width, and the length that is sold where it is not 4.2 m: {Example}.");
                continue;
            }

            List<double> sizes = [];
            foreach (var number in numbers)
            {
                if (reader.Amount<Length>(choice, number.Any(char.IsLetter) ? number : $"{number} {unit}", "22 mm") is { } size)
                {
                    sizes.Add(size.Si);
                }
            }

            if (sizes.Count == numbers.Length)
            {
                var board = new BoardSize { Thickness = sizes[0], Width = sizes[1] };
                boards.Add(sizes.Count > 2 ? board with { Length = sizes[2] } : board);
            }
        }

        return boards.Count <= Most ? boards.ToImmutable() : Refused(reader, choice);
    }

    private const int Most = 12;

    private static ImmutableArray<BoardSize> Refused(AskedReader reader, Choice choice)
    {
        reader.Object(choice.Name, FormattableString.Invariant($"{choice.Name}: give at most {Most} boards."));
        return [];
    }
}
