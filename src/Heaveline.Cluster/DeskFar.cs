using System.Net;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;

namespace Heaveline.Cluster;

/// <summary>The desk of a study, as a machine that helps sees it.</summary>
/// <param name="host">The machine that helps.</param>
/// <param name="study">Where that of the study listens.</param>
internal sealed class DeskFar(IHost host, IPEndPoint study)
{
    private readonly IStudyDesk desk = host.Services.GetRequiredService<IGrainFactory>().GetGrain<IStudyDesk>(0);
    private readonly ISiloStatusOracle machines = host.Services.GetRequiredService<ISiloStatusOracle>();

    /// <inheritdoc cref="IStudyDesk.Ask"/>
    public Task<StudyOffer> Ask(string machine, string program) => At(() => desk.Ask(machine, program));

    /// <inheritdoc cref="IStudyDesk.Enter"/>
    public Task<string> Enter(string silo, string machine, int threads, byte[] answer) => At(() => desk.Enter(silo, machine, threads, answer));

    /// <inheritdoc cref="IStudyDesk.State"/>
    public Task<StudyState> State(string silo) => At(() => desk.State(silo));

    /// <inheritdoc cref="IStudyDesk.Leave"/>
    public Task Leave(string silo) => At(async () =>
    {
        await desk.Leave(silo).ConfigureAwait(false);
        return true;
    });

    private Task<T> At<T>(Func<Task<T>> call) =>
        machines.GetApproximateSiloStatuses(onlyActive: true).Keys.FirstOrDefault(silo => silo.Endpoint.Equals(study)) is { } silo
            ? Standing.At(silo, call)
            : Task.FromException<T>(new SiloUnavailableException("The machine of the study is not there."));
}
