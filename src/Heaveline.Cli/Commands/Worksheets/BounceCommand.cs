using System.CommandLine;
using Heaveline.Cars.Worksheets;
using Heaveline.Cli.Output;
using Heaveline.Quantities;

namespace Heaveline.Cli.Commands.Worksheets;

/// <summary>Swings counted over a time.</summary>
internal static class BounceCommand
{
    public static Command Of(Streams streams)
    {
        var cycles = new Option<string>("--swings") { Description = "Whole swings counted, down and up again.", HelpName = "NUMBER", Required = true };
        var time = new Option<string>("--time") { Description = "Time they took.", HelpName = "TIME", Required = true };
        var mass = new Option<string?>("--mass") { Description = "Mass that bounces, to tell a locked suspension.", HelpName = "MASS" };
        var tyres = new Option<string?>("--tyres") { Description = "Rate of all tyres under it together.", HelpName = "RATE" };
        var json = Options.Json();
        var command = new Command(
            "bounce",
            """
            Frequency from counted swings, and whether friction had locked the suspension.

            Example:
              heaveline worksheet bounce --swings 5 --time "3.9 s" --mass "1360 kg" --tyres "840 N/mm"
            """)
        {
            cycles,
            time,
            mass,
            tyres,
            json,
        };
        command.SetAction(r =>
        {
            var sheet = BounceSheet.Of(
                Typed.Amount<Plain>(cycles.Name, r.GetValue(cycles)!),
                Typed.Amount<Time>(time.Name, r.GetValue(time)!),
                Typed.Maybe<Mass>(mass.Name, r.GetValue(mass)),
                Typed.Maybe<Stiffness>(tyres.Name, r.GetValue(tyres)));
            return new SheetText("bounce", "Bounce test")
                .Add("frequency", "frequency", "Hz", "F2", sheet.Frequency)
                .Add("locked", "on the tyres alone", "Hz", "F2", sheet.Locked)
                .Write(streams, sheet.Notes, r.GetValue(json));
        });
        return command;
    }
}
