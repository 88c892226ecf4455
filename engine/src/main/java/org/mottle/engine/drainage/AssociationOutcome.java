package org.mottle.engine.drainage;

import org.mottle.engine.survey.Refusal;

/** Whether wetness goes with the lie of the land, or why that cannot be tested. */
public sealed interface AssociationOutcome permits TerrainAssociation, AssociationOutcome.Refused {

  /** Not tested. */
  record Refused(Refusal why) implements AssociationOutcome {}
}
