using Microsoft.Extensions.DependencyInjection;
using Orleans.Placement;

namespace Heaveline.Cluster;

/// <summary>The desk of the study of this machine.</summary>
/// <param name="services">What this machine has.</param>
[RandomPlacement]
internal sealed class StudyDesk(IServiceProvider services) : Grain, IStudyDesk
{
    // Whoever asks says where it stands. Where that machine has gone it would come up at another one, which has no study.
    private readonly HelpedStudy study = services.GetService<HelpedStudy>()
        ?? throw new SiloUnavailableException("The machine of the study has gone.");

    /// <inheritdoc/>
    public Task<StudyOffer> Ask(string machine, string program) => Task.FromResult(study.Offer(machine, program));

    /// <inheritdoc/>
    public Task<string> Enter(string silo, string machine, int threads, byte[] answer) =>
        Task.FromResult(study.Enter(silo, machine, threads, answer));

    /// <inheritdoc/>
    public Task<StudyState> State(string silo) => Task.FromResult(study.State(silo));

    /// <inheritdoc/>
    public Task Leave(string silo)
    {
        study.Leave(silo);
        return Task.CompletedTask;
    }
}
