using System.CommandLine;
using Heaveline.Cars;
using Heaveline.Cars.Worksheets;
using Heaveline.Cli.Output;
using Heaveline.Quantities;

namespace Heaveline.Cli.Commands.Worksheets;

/// <summary>Height of the centre of gravity by lifting one axle.</summary>
internal static class TiltCommand
{
    public static Command Of(Streams streams)
    {
        var total = Needed("--total", "Weight of the whole car.", "MASS");
        var level = Needed("--level", "Load of the axle that stays down, car level.", "MASS");
        var lifted = Needed("--lifted", "Load of the same axle, the other one lifted.", "MASS");
        var angle = Needed("--angle", "By how much the car was turned from level.", "ANGLE");
        var wheelbase = Needed("--wheelbase", "From front to rear wheel centre.", "LENGTH");
        var radius = Needed("--radius", "Height of the front and the rear wheel centres, car level.", "FRONT,REAR");
        var rear = new Option<bool>("--rear-lifted") { Description = "The rear axle was lifted; the front when left out." };
        var free = new Option<bool>("--not-locked") { Description = "The suspension was free to move." };
        var unsprung = new Option<string?>("--unsprung") { Description = "All unsprung mass, to give the body's own height for the car file.", HelpName = "MASS" };
        var json = Options.Json();
        var command = new Command(
            "tilt",
            """
            Height of the centre of gravity from a tilt test, with its error budget.

            Example:
              heaveline worksheet tilt --total "1360 kg ± 2" --level "618 kg ± 1" --lifted "647 kg ± 1" --angle "12° ± 0.3°" --wheelbase "2.70 m" --radius "0.31 m, 0.31 m" --unsprung "162 kg ± 10"
            """)
        {
            total,
            level,
            lifted,
            angle,
            wheelbase,
            radius,
            rear,
            free,
            unsprung,
            json,
        };
        command.SetAction(r =>
        {
            var radii = Typed.Parts(radius.Name, r.GetValue(radius)!, 2);
            var readings = new TiltReadings
            {
                Total = Typed.Amount<Mass>(total.Name, r.GetValue(total)!),
                Level = Typed.Amount<Mass>(level.Name, r.GetValue(level)!),
                Lifted = Typed.Amount<Mass>(lifted.Name, r.GetValue(lifted)!),
                Angle = Typed.Amount<Angle>(angle.Name, r.GetValue(angle)!),
                Wheelbase = Typed.Amount<Length>(wheelbase.Name, r.GetValue(wheelbase)!),
                FrontRadius = Typed.Amount<Length>(radius.Name, radii[0]),
                RearRadius = Typed.Amount<Length>(radius.Name, radii[1]),
                LiftedEnd = r.GetValue(rear) ? AxleEnd.Rear : AxleEnd.Front,
                Locked = !r.GetValue(free),
            };
            return Run(streams, readings, Typed.Maybe<Mass>(unsprung.Name, r.GetValue(unsprung)), r.GetValue(json));
        });
        return command;
    }

    private static int Run(Streams streams, TiltReadings readings, Amount<Mass>? unsprung, bool json)
    {
        var sheet = TiltSheet.Of(readings);
        var radius = new Amount<Length>(0.5 * (readings.FrontRadius.Si + readings.RearRadius.Si), readings.FrontRadius.Doubt);
        var body = unsprung is { } mass ? sheet.BodyHeight(readings.Total, mass, radius) : default(Amount<Length>?);
        var text = new SheetText("tilt", "Tilt test")
            .Add("moved", "load moved to the lower axle", "kg", "F1", sheet.Moved)
            .Add("above-axle-line", "centre of gravity above the axle line", "mm", "F0", sheet.AboveAxleLine)
            .Add("above-ground", "centre of gravity above the ground", "mm", "F0", sheet.AboveGround);
        if (body is { } height)
        {
            text.Add("body-height", "the body's alone, for the car file", "mm", "F0", height)
                .Paste("body:", $"  centre-of-gravity-height: {SheetText.Amount(height, "m")}");
        }

        foreach (var part in sheet.Budget)
        {
            text.Add("part-" + part.What.Replace(' ', '-').Replace("'", "", StringComparison.Ordinal), $"± from the {part.What}", "mm", "F1", 1e3 * part.HalfWidth);
        }

        return text.Write(streams, body is null ? [.. sheet.Notes, "The car file wants the body's height without wheels and axles: give --unsprung."] : sheet.Notes, json);
    }

    private static Option<string> Needed(string name, string description, string value) => new(name) { Description = description, HelpName = value, Required = true };
}
