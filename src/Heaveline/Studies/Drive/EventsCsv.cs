using System.Globalization;
using System.Text;
using Heaveline.Answers;
using Heaveline.Drives.Events;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>The bumps of a drive as CSV: a row each, those that do not count among them; the unit in the header.</summary>
public static class EventsCsv
{
    /// <summary>The text, in UTF-8.</summary>
    /// <param name="events">The bumps; null: none were looked for.</param>
    public static byte[] Of(DriveEvents? events)
    {
        var measures = events?.Events.SelectMany(e => e.Numbers.All).Select(n => n.Measure).DistinctBy(m => m.Key).ToArray() ?? [];
        var text = new StringBuilder(
            "number,site,kind,counts,by hand,why not,seen [s],onset [s],onset half-width [s],speed [km/h],speed half-width [km/h],"
                + "speed change [1/s],distance [m],length [m],length half-width [m],hit until [s],settling until [s]");
        foreach (var measure in measures)
        {
            var unit = measure.Unit.Symbol == "–" ? "" : $" [{measure.Unit.Symbol}]";
            text.Append(CultureInfo.InvariantCulture, $",{measure.Key}{unit},{measure.Key} half-width{unit}");
        }

        text.Append('\n');
        foreach (var e in events?.Events ?? [])
        {
            text.Append(
                CultureInfo.InvariantCulture,
                $"{e.Number},{CsvCell.Of(e.Site)},{EventWords.Kind(e.Kind)},{Yes(e.IsKept)},{Yes(e.ByHand)},{CsvCell.Of(e.Reason)}");
            foreach (var value in new[]
            {
                e.Seen, e.Onset, e.OnsetHalfWidth, In.KilometresPerHour.Of(e.Speed), In.KilometresPerHour.Of(e.SpeedHalfWidth), e.SpeedChange,
                e.Distance, e.Length, e.LengthHalfWidth, e.HitUntil, e.SettlingUntil,
            })
            {
                text.Append(',').Append(Cell(value));
            }

            foreach (var measure in measures)
            {
                var number = e.Numbers.All.FirstOrDefault(n => n.Measure.Key == measure.Key);
                text.Append(',').Append(Cell(measure.Unit.Of(number?.Value ?? double.NaN)));
                text.Append(',').Append(Cell(double.IsFinite(number?.Value ?? double.NaN) ? measure.Unit.Of(number!.HalfWidth) : double.NaN));
            }

            text.Append('\n');
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }

    private static string Yes(bool it) => it ? "yes" : "no";

    private static string Cell(double value) => double.IsFinite(value) ? value.ToString("G7", CultureInfo.InvariantCulture) : "";
}
