using System.Globalization;
using System.Text;
using Heaveline.Answers;
using Heaveline.Drives.Comparison;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>Every pass of a comparison as CSV, a row each, not rounded.</summary>
internal static class ProveCsv
{
    /// <summary>The text, in UTF-8.</summary>
    public static byte[] Of(IReadOnlyList<ProvedNumber> proved)
    {
        var text = new StringBuilder("site,state,event,speed (km/h)");
        foreach (var number in proved)
        {
            text.Append(CultureInfo.InvariantCulture, $",{CsvCell.Of($"{number.Title} ({number.Unit.Symbol})")},counts");
        }

        text.Append('\n');
        var passes = proved.SelectMany(n => n.Result.Counted.Concat(n.Result.LeftOut));
        foreach (var (site, isAfter, number, speed) in passes.Select(p => (p.Site, p.IsAfter, p.Number, p.Speed)).Distinct()
            .OrderBy(p => p.IsAfter).ThenBy(p => p.Number))
        {
            text.Append(
                CultureInfo.InvariantCulture, $"{CsvCell.Of(site)},{(isAfter ? "after" : "before")},{number},{In.KilometresPerHour.Of(speed):G9}");
            foreach (var one in proved)
            {
                bool Is(ComparedPass p) => p.Site == site && p.IsAfter == isAfter && p.Number == number;
                var counted = one.Result.Counted.FirstOrDefault(Is);
                var pass = counted ?? one.Result.LeftOut.FirstOrDefault(Is);
                text.Append(pass is null ? ",," : string.Create(
                    CultureInfo.InvariantCulture, $",{one.Unit.Of(pass.Value):G9},{(counted is null ? "no" : "yes")}"));
            }

            text.Append('\n');
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }
}
