using System.Collections.Immutable;
using Heaveline.Cli.Output;
using Heaveline.Files.Cars;
using Heaveline.Quantities;
using Heaveline.Web.Pages.Passes;

namespace Heaveline.Cli.Commands;

/// <summary>A pass as one HTML file, made by the pages.</summary>
internal static class LiveFiles
{
    /// <summary>The file of a pass that was computed.</summary>
    public static byte[] Of(Given given, PassAnswer answer, ReaderUnits units, CancellationToken stop)
    {
        var (path, pass) = (given.Of(Choices.Car)!, answer.Pass);
        var speed = Math.Round(In.KilometresPerHour.Of(pass.Speed), 6);
        var view = new PassView
        {
            State = new PassState
            {
                Car = Path.GetFileNameWithoutExtension(path),
                Load = pass.Model.Load.Name,
                Road = given.Of(Choices.Road) ?? Choices.Road.Usual!,
                Values = ImmutableSortedDictionary.Create<string, double>(StringComparer.Ordinal).Add(PassState.Speed, speed),
            },
            Reading = CarFile.Load(path),
            Described = pass.Model.Car,
            Load = pass.Model.Load,
            Road = pass.Road,
            Now = answer,
            Former = null,
        };
        return new LiveFile(view, units, Release.Version).Bytes();
    }

    /// <summary>This program has the pages.</summary>
    public static void Leave(Streams streams)
    {
    }
}
