/** What a simulation returns: columns by day, records by season, the yield ledger. */
@NullMarked
package org.thirstline.model.result;

import org.jspecify.annotations.NullMarked;
