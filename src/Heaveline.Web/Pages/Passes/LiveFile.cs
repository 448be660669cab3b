using System.Buffers.Binary;
using System.Diagnostics;
using System.IO.Compression;
using System.Net;
using System.Runtime.InteropServices;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Heaveline.Figures.Silhouettes;
using Heaveline.Press;
using Heaveline.Quantities;
using Heaveline.Studies;
using Heaveline.Web.Pages.Parts;
using Heaveline.Web.Serving;

namespace Heaveline.Web.Pages.Passes;

/// <summary>
/// One pass as one HTML file that stands by itself: picture, curves, sliders and numbers that follow them in the reader's browser, with what the
/// program said beside them. It loads nothing and sends nothing.
/// </summary>
/// <param name="view">The pass.</param>
/// <param name="units">The reader's units.</param>
/// <param name="version">Version of the program.</param>
internal sealed partial class LiveFile(PassView view, ReaderUnits units, string version)
{
    private static readonly string Script = ScriptBundle.Of("livefile.js");

    // The inks of all pages, what the pass page shows of one pass, and the file's own.
    private static readonly string Style = string.Join(
        '\n', ScriptBundle.Sheet("inks.css"), ScriptBundle.Sheet("pass.css"), ScriptBundle.Sheet("livefile.css"));

    /// <summary>
    /// What a browser may do with it: run the script and the style that stand in it, by their hashes, make modules of the bytes it carries
    /// (decision 16), show pictures that stand in it; nothing else, and nothing from anywhere [Content Security Policy Level 3, W3C].
    /// </summary>
    private static readonly string Policy =
        $"default-src 'none'; script-src '{Hash(Script)}' 'wasm-unsafe-eval'; style-src '{Hash(Style)}'; img-src data:; "
        + "base-uri 'none'; form-action 'none'";

    private readonly SliderLine[] lines = [.. SliderLine.Of(view, units).SelectMany(group => group.Lines)];

    /// <summary>The file.</summary>
    public byte[] Bytes()
    {
        var live = LivePass.Of(1, view, lines, units);
        var title = units.Text(PassWords.Heading(view));
        var html =
            $"""
            <!doctype html>
            <html lang="en">
            <head>
            <meta charset="utf-8">
            <meta http-equiv="Content-Security-Policy" content="{Policy}">
            <meta name="viewport" content="width=device-width, initial-scale=1">
            <meta name="generator" content="Heaveline {Text(version)}">
            <title>{Text(title)}</title>
            <style>{Style}</style>
            </head>
            <body>
            <main class="pass">
            {Verdict()}
            <div class="file-body">
            {Player()}
            <section class="file-sliders scripted" aria-label="What to change">
            {Sliders(live)}
            </section>
            </div>
            {Words()}
            {Table()}
            {Foot()}
            </main>
            <script type="text/plain" id="numbers">{Packed(live)}</script>
            <script>{Script}</script>
            </body>
            </html>

            """;
        return Encoding.UTF8.GetBytes(html.ReplaceLineEndings("\n"));
    }

    // The headline's number, as it was written and as the sliders stand.
    private string Verdict()
    {
        var verdict = PassVerdict.Of(view);
        var head = view.Changes.FirstOrDefault(change => change.Measure == Measures.PassCatalogue.PitchOver(view.After.Pass.Road)[0]);
        var now = head is null
            ? ""
            : $"""
            <p class="moved" id="moved">As the sliders stand, its {Said(head.Measure.Name)} is
            <mark><span data-live="{head.Measure.Key}" data-unit></span></mark>; as written {Said(head.PrintWithUnit(Own(head)))}.
            What is told of the crossing as written besides (stops that are pressed, wheels off the road, cautions) is not followed by the sliders,
            and is put away until all stands as written again; the program tells it of any place.</p>
            """;
        return
            $"""
            <div class="verdict">
            <h1><span class="drive-of">{Said(PassWords.Heading(view))}, {Text(view.Now.Model.Load.Name)}, as written</span>
            <span class="finding written">{Said(verdict.Lead)}<mark>{Said(verdict.Number)}</mark>{Said(verdict.Rest)}</span></h1>
            {now}
            <p id="verdict" class="written">{Said(verdict.Detail)}</p>
            </div>
            """;
    }

    private string Player()
    {
        var figure = view.Now.Figure(PassAnswer.Traces).In(units);
        var pitch = figure with { Panels = [figure.Panels.First(panel => panel.Id == "pitch")], Caption = "" };
        // An SVG's own face would weigh more than all the rest: its letters are the reader's.
        var picture = Convert.ToBase64String(Encoding.UTF8.GetBytes(Face().Replace(Encoding.UTF8.GetString(Svg.Of(pitch)), "")));
        var frames = string.Concat(Enumerable.Repeat(
            "<button type=\"button\" data-frame><canvas aria-hidden=\"true\"></canvas><span></span></button>", PassPhase.Count));
        var alt = $"{view.Described.Name}, a {SilhouetteChoice.Of(view.Now.Model.Car).Word}, from its side, driving to the right. "
            + PassWords.Story(view)[0];
        return
            $"""
            <div class="scripted">
            <div class="scene-box"><canvas data-scene tabindex="0" role="img" aria-label="{Said(alt)}" aria-describedby="player-keys"></canvas>
            <p class="waiting" data-waiting>The picture is being drawn.</p>
            <div class="scene-keys" role="group" aria-label="The picture"><button type="button" class="leading" data-play>Drive it</button>
            <label><span class="hidden-label">Movements drawn</span><select data-stretch><option value="3" selected>movements ×3</option>
            <option value="1">movements ×1</option></select></label>
            <label><span class="hidden-label">Speed of the picture</span><select data-rate><option value="1">real time</option>
            <option value="0.5">at 1/2</option><option value="0.25" selected>at 1/4</option>
            <option value="0.1">at 1/10</option></select></label></div>
            <p class="said"><output class="number" data-time></output><span data-said></span></p></div>
            <div class="film" data-film role="group" aria-label="Phases of the pass"><label class="bead"><span class="hidden-label">Moment</span>
            <input type="range" data-scrub min="0" max="1000" step="1" value="0" aria-describedby="player-keys"></label>{frames}</div>
            <p class="player-words quiet small"><span data-behind></span> Movements of road, wheels and body are drawn as much larger as is said;
            how the car stands is to scale. <span id="player-keys">Keys, with the picture or its bead in focus: space drives and rests, the arrows
            step, Home and End go to the ends.</span></p>
            <figure class="strips"><div class="strip-box" data-strips role="img" aria-label="{Said(figure.AltText)}"></div>
            <button type="button" data-curves aria-expanded="true">All curves</button></figure>
            </div>
            <p class="unscripted"><img alt="{Said(pitch.AltText)}" src="data:image/svg+xml;base64,{picture}"></p>
            <p class="unscripted">Where no script runs, the pass stands here as it was written.</p>
            """;
    }

    private string Sliders(LivePass? live)
    {
        var followed = live is null
            ? []
            : JsonNode.Parse(live.Structure)!["sliders"]!.AsArray().Select(slider => slider!["key"]!.GetValue<string>())
                .Concat([PassState.Speed, PassState.Height]).ToHashSet(StringComparer.Ordinal);
        var rows = lines.Where(line => followed.Contains(line.Key)).Select(line =>
            $"""
            <div class="slider"><label for="slide-{line.Key}">{Said(line.Label)}</label>
            <span class="exact"><output data-exact="{line.Key}" for="slide-{line.Key}">{Text(line.Text(line.Value))}</output>
            <span class="unit">{Text(line.Scale.Unit)}</span></span>
            <input type="range" id="slide-{line.Key}" data-setting="{line.Key}" data-unit="{Text(line.Scale.Unit)}"
            min="{Rounded.Text(line.Scale.From)}" max="{Rounded.Text(line.Scale.To)}" step="{Rounded.Text(line.Scale.Step)}"
            value="{Rounded.Text(line.Value)}">
            <p class="refusal" data-refusal="{line.Key}" role="alert"></p></div>
            """);
        return live is null
            ? "<p class=\"doubtful\">There are no sliders: this crossing is worked out by the program alone (a road with a sharp step, a very "
                + "long crossing, or one that breaks off).</p>"
            : "<h2>Change it</h2>\n" + string.Join('\n', rows)
                + "\n<p><button type=\"button\" data-back>All as written</button></p>"
                + "\n<p class=\"stills doubtful\">This browser makes no modules of what the file carries: the sliders stand still.</p>";
    }

    private string Words()
    {
        var story = string.Concat(PassWords.Story(view).Where(paragraph => paragraph.Length > 0).Select(paragraph => $"<p>{Said(paragraph)}</p>\n"));
        var empty = EmptySeats.Of(view.Now.Model.Car, view.Now.Model.Load) ?? "";
        string[] doubts = [PassWords.Slips(view.Reading.Warnings), empty, .. view.Now.Cautions];
        return $"<section class=\"written\"><h2>What happened, as written</h2>\n{(view.Now.IsWhole ? story : "")}</section>\n"
            + string.Concat(doubts.Where(doubt => doubt.Length > 0).Select(doubt => $"<p class=\"doubtful written\">{Said(doubt)}</p>\n"));
    }

    private string Table()
    {
        var rows = view.Changes.Select(change =>
        {
            var (symbol, written) = (change.Measure.Unit.Symbol, Own(change));
            return $"<tr data-measure=\"{change.Measure.Key}\"><th scope=\"row\">{Said(change.Measure.Label)}, <span class=\"quiet\">"
                + $"{Text(units.Unit(symbol))}</span></th><td class=\"number\">{Text(units.Number(symbol, change.Print(written)))}</td>"
                + $"<td class=\"number now\"><span data-live=\"{change.Measure.Key}\"></span></td></tr>\n";
        });
        return
            $"""
            <div class="wide-scroll" tabindex="0" role="region" aria-label="The numbers">
            <table class="before-after"><caption>The numbers of this crossing</caption>
            <thead><tr><th scope="col">Measure</th><th scope="col" class="number">as written</th>
            <th scope="col" class="number now">now</th></tr></thead>
            <tbody>
            {string.Concat(rows)}</tbody></table></div>
            """;
    }

    private string Foot()
    {
        var verdict = PassVerdict.Of(view);
        return
            $"""
            <footer class="small"><p>Written by Heaveline {Text(version)} from the car file {Text(view.State.Car)}:
            {Said(PassCopy.Of(view, verdict))}</p>
            <p class="scripted">The numbers under “now”, the curves and the picture are computed in this browser by the same lines by which the
            program computed those under “as written”. The file loads nothing and sends nothing: nothing runs but the script that stands in it.</p>
            <p>{Said(Studies.Cautions.Short)}</p></footer>
            """;
    }

    // That of the car whose sliders these are.
    private double? Own(MeasureChange change) => view.IsTurned ? change.Before : change.After;

    private string Packed(LivePass? live)
    {
        var frame = PassFrame.Of(view, units, null, Stopwatch.StartNew(), lines, state: 1);
        var drawn = Neighbours.Of(Drawn(frame.Numbers), sizeof(float));
        byte[][] blocks = live is null
            ? [drawn]
            : [drawn, Neighbours.Of(live.Numbers, sizeof(double)), live.Step, live.Ahead, live.Balance, live.Windows, live.Measures, .. live.Folds];
        var said = Encoding.UTF8.GetBytes(new JsonObject
        {
            ["frame"] = frame.Structure,
            ["live"] = live?.Structure,
            ["sizes"] = new JsonArray([.. blocks.Select(block => (JsonNode)block.Length)]),
        }.ToJsonString());
        using var packed = new MemoryStream();
        using (var zip = new GZipStream(packed, CompressionLevel.SmallestSize))
        {
            Span<byte> length = stackalloc byte[sizeof(int)];
            BinaryPrimitives.WriteInt32LittleEndian(length, said.Length);
            zip.Write(length);
            zip.Write(said);
            foreach (var block in blocks)
            {
                zip.Write(block);
            }
        }

        return Convert.ToBase64String(packed.ToArray());
    }

    // What is drawn as it was written is as fine as an eight-thousandth of itself: no pixel moves.
    private static byte[] Drawn(byte[] numbers)
    {
        byte[] drawn = [.. numbers];
        foreach (ref var number in MemoryMarshal.Cast<byte, uint>(drawn.AsSpan()))
        {
            number = (number + 0x400) & ~0x7ffu;
        }

        return drawn;
    }

    private string Said(string metric) => Text(units.Text(metric));

    private static string Text(string text) => WebUtility.HtmlEncode(text);

    private static string Hash(string text) => $"sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(text)))}";

    [GeneratedRegex("<style>.*?</style>", RegexOptions.Singleline | RegexOptions.CultureInvariant)]
    private static partial Regex Face();
}
