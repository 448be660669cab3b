using System.Globalization;
using System.Text;
using System.Text.Json;
using Heaveline.Camera.Drawn;
using Heaveline.Camera.Frames;
using Heaveline.Camera.Stills;
using Heaveline.Camera.Tracks;
using Heaveline.Files.Cars;
using Heaveline.Films;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Camera;

/// <summary>The program beside heaveline that looks into films. What it finds it says as text; how far it is and why not, on the other
/// stream.</summary>
internal static class Program
{
    private const string Usage = """
        heaveline-camera follows a passing car through a film; heaveline asks it, and makes heights and judgements of what it finds.

          about FILM                                       size, frames, duration
          frame FILM --at S --to PICTURE.png               one frame, as it is
          hubs FILM --at S [--box X,Y,X,Y]                 where two wheels may be in it
          track FILM --at S --front X,Y --rear X,Y --box X,Y,X,Y [--read-out S]
                                                           hubs, body and camera in every frame; read-out: from the first row to the last
          still FILM --at S --front X,Y --rear X,Y --box X,Y,X,Y --to PICTURE.png
                                                           the marked frame to show: the two wheels clear, the rest of the car
                                                               coarser than letters, all round it grey
          lamp FILM --at S --lamp X,Y                      brightness of an oncoming headlamp
          draw CAR.yaml --to FILM.mp4 [--speed KM/H] [--height MM] [--rate FRAMES/S] [--shake PX] [--pan SHARE] [--slant DEGREES] [--read-out S]
                                                           a film of which everything is known: the car over a round-top hump of 3.7 m

        S are seconds after the first frame, X,Y pixels from the upper left one. FFmpeg reads and writes films: it must be installed.
        Exit codes: 0 done, 1 film or marks refused, 2 wrong usage, 3 could not be computed.
        """;

    // A tenth of a second from the first row to the last: cameras read in less.
    private const double LongestReadOut = 0.1;

    private static int Main(string[] args)
    {
        CultureInfo.CurrentCulture = CultureInfo.DefaultThreadCurrentCulture = CultureInfo.InvariantCulture;
        Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
        if (args is [] || args.Contains("--help"))
        {
            Console.WriteLine(Usage);
            return 0;
        }

        using var stop = new CancellationTokenSource();
        Console.CancelKeyPress += (_, e) =>
        {
            e.Cancel = true;
            stop.Cancel();
        };
        try
        {
            var asked = AskedWords.Of(args, Options);
            Console.WriteLine(FilmCamera.Loaded(() => Answer(asked, stop.Token)));
            return 0;
        }
        catch (FormatException wrong)
        {
            Console.Error.WriteLine($"heaveline-camera: {wrong.Message} Try heaveline-camera --help.");
            return 2;
        }
        catch (RunFailedException failed)
        {
            return Said(failed, 3);
        }
        catch (NoAnswerException refused)
        {
            return Said(refused, 1);
        }
        catch (OperationCanceledException)
        {
            Console.Error.WriteLine("heaveline-camera: stopped.");
            return 3;
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            Console.Error.WriteLine($"heaveline-camera: {failure.Message}");
            return 3;
        }
    }

    private static string[] Options(string command) => command switch
    {
        "about" => [],
        "frame" => ["--at", "--to"],
        "hubs" => ["--at", "--box"],
        "track" => ["--at", "--front", "--rear", "--box", "--read-out"],
        "still" => ["--at", "--front", "--rear", "--box", "--to"],
        "lamp" => ["--at", "--lamp"],
        "draw" => ["--to", "--speed", "--height", "--rate", "--shake", "--pan", "--slant", "--read-out"],
        _ => throw new FormatException($"'{command}' is nothing that is asked of a film."),
    };

    private static string Answer(AskedWords asked, CancellationToken stop)
    {
        if (asked.Command == "draw")
        {
            return Draw(asked, stop);
        }

        // Before a film is opened for nothing.
        var picture = asked.Command is "frame" or "still" ? asked.To(".png") : "";
        var film = FilmFile.Open(asked.File, stop);
        switch (asked.Command)
        {
            case "track":
                var rows = asked.Number("--read-out", 0.0, 0.0, LongestReadOut) / film.Height;
                return TrackText.Of(FilmCamera.Followed(asked.File, film, asked.Marks(), rows, new SaidProgress(), stop));
            case "lamp":
                return LampText.Of(LampFollower.Follow(film, asked.Point("--lamp"), asked.Time, new SaidProgress(), stop));
            case "frame":
                using (var frame = FilmFollower.Marked(film, asked.Time, null, stop, out _))
                {
                    return Written(picture, frame);
                }

            case "still":
                MarkChecks.Of(asked.Marks(), film.Width, film.Height);
                using (var frame = FilmFollower.Marked(film, asked.Marks().Time, null, stop, out _))
                using (var still = StillPicture.Of(frame, asked.Marks()))
                {
                    return Written(picture, still);
                }

            case "hubs":
                using (var frame = FilmFollower.Marked(film, asked.Time, null, stop, out _))
                {
                    var hubs = asked.Text("--box") is null ? HubSearch.Of(frame) : HubSearch.Of(frame, asked.Box.From, asked.Box.To);
                    return hubs is var (left, right)
                        ? JsonSerializer.Serialize(new Dictionary<string, double[]> { ["left"] = [left.X, left.Y], ["right"] = [right.X, right.Y] })
                        : "{}";
                }

            default:
                return JsonSerializer.Serialize(new Dictionary<string, double?>
                {
                    ["width"] = film.Width, ["height"] = film.Height, ["frames"] = film.About, ["duration"] = film.Known.Duration,
                });
        }
    }

    private static string Written(string to, Mat picture) => Cv2.ImWrite(to, picture)
        ? JsonSerializer.Serialize(new Dictionary<string, string> { ["picture"] = to })
        : throw new IOException($"The picture {to} could not be written. Look at the folder and whether it may be written.");

    private static string Draw(AskedWords asked, CancellationToken stop)
    {
        var to = asked.To(".mp4");
        var read = CarFile.Load(asked.File);
        var why = read.Refusals is [var first, ..] ? first.Message : "nothing was said";
        var car = read.Value ?? throw new FilmRefusedException(
            $"{asked.File} is no car that can be drawn ({why}).",
            "Look at it with: heaveline check.");
        var hump = new RoundTopHump { Height = new(In.Millimetres.ToSi(asked.Number("--height", 75.0, 5.0, 200.0))), Length = new(3.7) };
        var film = new DrawnFilm
        {
            Pass = DrawnPass.Of(car, Road.From(hump), In.KilometresPerHour.ToSi(asked.Number("--speed", 25.0, 5.0, 150.0))),
            Clock = new DrawnClock { Rate = asked.Number("--rate", 60.0, 10.0, 1000.0) },
            Camera = new DrawnCamera
            {
                Shake = asked.Number("--shake", 0.0, 0.0, 50.0), Pan = asked.Number("--pan", 0.0, 0.0, 1.0),
                Slant = In.Degrees.ToSi(asked.Number("--slant", 0.0, -30.0, 30.0)),
                Readout = asked.Number("--read-out", 0.0, 0.0, LongestReadOut),
            },
        }.WholeCar();
        FilmWriter.Write(film, to, stop: stop);
        var marks = film.Marks(0.5 * (film.To - film.From));
        return JsonSerializer.Serialize(new Dictionary<string, object>
        {
            ["at"] = new[] { Math.Round(marks.Time, 4) },
            ["front"] = new[] { Math.Round(marks.Front.X, 1), Math.Round(marks.Front.Y, 1) },
            ["rear"] = new[] { Math.Round(marks.Rear.X, 1), Math.Round(marks.Rear.Y, 1) },
            ["box"] = new[] { marks.BoxFrom.X, marks.BoxFrom.Y, marks.BoxTo.X, marks.BoxTo.Y }.Select(v => Math.Round(v)).ToArray(),
            ["load"] = film.Pass.Load,
            ["speed_km_h"] = Math.Round(In.KilometresPerHour.Of(film.Pass.Speed), 1),
            ["hump_mm"] = Math.Round(In.Millimetres.Of(hump.Height.Si), 1),
            ["wheelbase_m"] = Math.Round(film.Pass.Wheelbase, 3),
        });
    }

    private static int Said(NoAnswerException why, int code)
    {
        Console.WriteLine(JsonSerializer.Serialize(new Dictionary<string, string> { ["reason"] = why.Reason, ["advice"] = why.Advice }));
        Console.Error.WriteLine($"heaveline-camera: {why.Message}");
        return code;
    }

    // A line for every hundredth.
    private sealed class SaidProgress : IProgress<double>
    {
        private int last = -1;

        public void Report(double value)
        {
            var now = (int)(100.0 * value);
            if (now > last)
            {
                last = now;
                Console.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"progress {now}"));
            }
        }
    }
}
