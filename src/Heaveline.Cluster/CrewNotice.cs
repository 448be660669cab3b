using System.Net;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Heaveline.Cluster;

/// <summary>What is noted of a machine that stands by, or of a study that is open to the crew. Its code is no part of it.</summary>
/// <param name="Study">What the study is known by to the crew; blank for a machine that stands by.</param>
/// <param name="Machine">What the machine is called.</param>
/// <param name="Program">Which Heaveline it has.</param>
/// <param name="Threads">On how many threads it does pieces.</param>
/// <param name="Host">The address at which the study is found.</param>
/// <param name="Port">The port there.</param>
internal sealed record CrewNotice(string Study, string Machine, string Program, int Threads, string Host, int Port)
{
    // Ours has some 300 signs; names are cut when they are read.
    private const int Longest = 4096;

    // Guid, "N".
    private const int Mark = 32;

    private static readonly JsonDocumentOptions Strict = new() { AllowDuplicateProperties = false };

    /// <summary>As it is noted.</summary>
    public string Words => new JsonObject
    {
        ["study"] = Study, ["machine"] = Machine, ["program"] = Program, ["threads"] = Threads, ["host"] = Host, ["port"] = Port,
    }.ToJsonString();

    /// <summary>From what is noted; null where it is something else: whoever can write there can write anything.</summary>
    public static CrewNotice? Of(string words)
    {
        try
        {
            return words.Length <= Longest && JsonNode.Parse(words, documentOptions: Strict) is JsonObject noted
                && new CrewNotice(
                    noted["study"]!.GetValue<string>(),
                    PlainWords.Name(noted["machine"]!.GetValue<string>()),
                    PlainWords.Name(noted["program"]!.GetValue<string>()),
                    noted["threads"]!.GetValue<int>(),
                    noted["host"]!.GetValue<string>(),
                    noted["port"]!.GetValue<int>()) is { IsOne: true } own
                ? own
                : null;
        }
        catch (Exception other) when (other is JsonException or NullReferenceException or InvalidOperationException or FormatException)
        {
            return null;
        }
    }

    // A machine that waits is found nowhere; a study is, at an address and by its mark.
    private bool IsOne => Study.Length == 0
        || (Study.Length == Mark && Study.All(char.IsAsciiHexDigitLower) && IPAddress.TryParse(Host, out _)
            && Port is > IPEndPoint.MinPort and <= IPEndPoint.MaxPort);
}
